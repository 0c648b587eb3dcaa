import type { Cfm, Pascals, Quantity, Ratio } from "#lib/units/quantity.ts";
import { leakageAtRatio, pressureRatioSlope, rootPressureRatio } from "./side-pressure.ts";

/** Where `solveAirflow` writes what. */
export const AIRFLOW_OUT = {
  fanFlowCfm: 0,
  supplyStaticPa: 1,
  returnStaticPa: 2,
  supplyLeakageCfm: 3,
  returnLeakageCfm: 4,
  length: 5,
} as const;

/** Newton on a rising convex function: after the first step it closes in from above, quadratically. */
const MOST_STEPS = 60;
const SMALL_STEP = 1e-13;

/**
 * The kernel of `airflowAfterSealing`: unguarded, positional and without allocation, for inner loops. Writes to `out`
 * at the places of `AIRFLOW_OUT`. Leaks before below the fan flow, pressures above 0, slope from 0.
 */
export function solveAirflow(
  out: Float64Array,
  fanFlowCfm: Cfm,
  supplyStaticPa: Pascals,
  returnStaticPa: Pascals,
  supplyLeakageBeforeCfm: Cfm,
  supplyLeakageAfterCfm: Cfm,
  returnLeakageBeforeCfm: Cfm,
  returnLeakageAfterCfm: Cfm,
  fanSlopeCfmPerPa: Quantity<"cfm/Pa">,
  exponent: Ratio,
): void {
  const supplyRegister = fanFlowCfm - supplyLeakageBeforeCfm;
  const returnRegister = fanFlowCfm - returnLeakageBeforeCfm;
  let flowCfm = fanFlowCfm;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const supplyV = rootPressureRatio(supplyRegister, supplyLeakageAfterCfm, flowCfm, exponent);
    const returnV = rootPressureRatio(returnRegister, returnLeakageAfterCfm, flowCfm, exponent);
    const risePa = supplyStaticPa * (supplyV * supplyV - 1) + returnStaticPa * (returnV * returnV - 1);
    const slope =
      supplyStaticPa * pressureRatioSlope(supplyRegister, supplyLeakageAfterCfm, supplyV, exponent) +
      returnStaticPa * pressureRatioSlope(returnRegister, returnLeakageAfterCfm, returnV, exponent);
    const move = (flowCfm - fanFlowCfm + fanSlopeCfmPerPa * risePa) / (1 + fanSlopeCfmPerPa * slope);
    if (Math.abs(move) <= SMALL_STEP * flowCfm) {
      out[AIRFLOW_OUT.fanFlowCfm] = flowCfm;
      out[AIRFLOW_OUT.supplyStaticPa] = supplyStaticPa * supplyV * supplyV;
      out[AIRFLOW_OUT.returnStaticPa] = returnStaticPa * returnV * returnV;
      out[AIRFLOW_OUT.supplyLeakageCfm] = leakageAtRatio(supplyLeakageAfterCfm, supplyV, exponent);
      out[AIRFLOW_OUT.returnLeakageCfm] = leakageAtRatio(returnLeakageAfterCfm, returnV, exponent);
      return;
    }
    flowCfm -= move;
  }
  throw new Error("The fan flow after sealing did not settle");
}
