import { DUCT_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Cfm, Pascals, Quantity } from "#lib/units/quantity.ts";
import { AIRFLOW_OUT, solveAirflow } from "./solve-airflow.ts";

/** How much a blower's flow falls for each pascal of external static pressure. */
export const FAN_SLOPES = {
  "fixed-speed": {
    value: 2,
    unit: "cfm/Pa",
    low: 1,
    high: 4,
    reason: "A usual slope of residential blower tables near their rating point.",
    source: { sourceId: "practice", locator: "blower tables, fixed-speed motor" },
  },
  "constant-flow": {
    value: 0,
    unit: "cfm/Pa",
    reason: "The motor holds its flow.",
    source: { sourceId: "practice", locator: "constant-flow motor" },
  },
} as const satisfies Record<string, SourcedValue>;

/** The system before the work, and its leaks after it. Leaks are flows at the static pressures before. */
export interface SealedSystem {
  fanFlowCfm: Cfm;
  supplyStaticPa: Pascals;
  returnStaticPa: Pascals;
  supplyLeakageBeforeCfm: Cfm;
  supplyLeakageAfterCfm: Cfm;
  returnLeakageBeforeCfm: Cfm;
  returnLeakageAfterCfm: Cfm;
}

export interface AirflowAfter {
  fanFlowCfm: Cfm;
  externalStaticPa: Pascals;
  supplyStaticPa: Pascals;
  returnStaticPa: Pascals;
  /** What the leaks left pass at the pressures after sealing. */
  supplyLeakageCfm: Cfm;
  returnLeakageCfm: Cfm;
  /** Air through the registers. */
  deliveredBeforeCfm: Cfm;
  deliveredAfterCfm: Cfm;
}

/**
 * Fan flow, static pressure and delivered air once leaks are sealed.
 * Each side Q = C·√P + L·(P/P₀)^0.6 with its leaks L as operating flow at P₀; fan Q = Q₀ − slope·(TESP − TESP₀), TESP
 * the two static pressures together. Valid while leaks are less than the fan flow. Source: derived; practice for the
 * slope of the fan. Left out: the coil's and filter's own pressure, which ride along with the return side.
 * @throws InputProblem when a value is not possible or a leak takes all of the flow.
 */
export function airflowAfterSealing({
  fanSlopeCfmPerPa = FAN_SLOPES["fixed-speed"].value,
  nameplateStaticPa,
  ...system
}: SealedSystem & {
  fanSlopeCfmPerPa?: Quantity<"cfm/Pa">;
  nameplateStaticPa?: Pascals;
}): AirflowAfter & { notes: readonly ValidityNote[] } {
  const { fanFlowCfm } = system;
  requireAbove({ field: "fanFlowCfm", label: "Fan flow", value: fanFlowCfm, unit: "cfm" });
  for (const field of ["supplyStaticPa", "returnStaticPa"] as const) {
    const label = field === "supplyStaticPa" ? "Supply static pressure" : "Return static pressure";
    const fix = "Enter the size of the pressure, without its sign.";
    requireAbove({ field, label, value: system[field], unit: "Pa", fix });
  }
  const slope = { field: "fanSlopeCfmPerPa", label: "Slope of the fan", value: fanSlopeCfmPerPa, unit: "cfm/Pa" };
  requireBetween({ ...slope, low: 0, high: 50 });
  for (const field of LEAK_FIELDS) {
    if (system[field] >= 0 && system[field] < fanFlowCfm) continue;
    refuse({
      field,
      detail: `A leak of ${system[field]} cfm must be from 0 to below the fan flow of ${fanFlowCfm} cfm`,
      fix: "Check the leakage while running: it may be a size at 25 Pa, or the fan flow may be too low.",
    });
  }
  const out = new Float64Array(AIRFLOW_OUT.length);
  solveAirflow(
    out,
    fanFlowCfm,
    system.supplyStaticPa,
    system.returnStaticPa,
    system.supplyLeakageBeforeCfm,
    system.supplyLeakageAfterCfm,
    system.returnLeakageBeforeCfm,
    system.returnLeakageAfterCfm,
    fanSlopeCfmPerPa,
    DUCT_LEAK_EXPONENT.value,
  );
  const at = (place: number) => out[place]!;
  const externalStaticPa = at(AIRFLOW_OUT.supplyStaticPa) + at(AIRFLOW_OUT.returnStaticPa);
  return {
    fanFlowCfm: at(AIRFLOW_OUT.fanFlowCfm),
    externalStaticPa,
    supplyStaticPa: at(AIRFLOW_OUT.supplyStaticPa),
    returnStaticPa: at(AIRFLOW_OUT.returnStaticPa),
    supplyLeakageCfm: at(AIRFLOW_OUT.supplyLeakageCfm),
    returnLeakageCfm: at(AIRFLOW_OUT.returnLeakageCfm),
    deliveredBeforeCfm: fanFlowCfm - system.supplyLeakageBeforeCfm,
    deliveredAfterCfm: at(AIRFLOW_OUT.fanFlowCfm) - at(AIRFLOW_OUT.supplyLeakageCfm),
    notes: judgeStatic(externalStaticPa, nameplateStaticPa),
  };
}

const LEAK_FIELDS = [
  "supplyLeakageBeforeCfm",
  "supplyLeakageAfterCfm",
  "returnLeakageBeforeCfm",
  "returnLeakageAfterCfm",
] as const;

function judgeStatic(externalStaticPa: Pascals, nameplateStaticPa: Pascals | undefined): ValidityNote[] {
  if (nameplateStaticPa === undefined || !(externalStaticPa > nameplateStaticPa)) return [];
  return [
    {
      code: "static-above-nameplate",
      severity: "problem",
      what: `After sealing the external static pressure is about ${Math.round(externalStaticPa)} Pa, above the nameplate's ${Math.round(nameplateStaticPa)} Pa.`,
      why: "Tight ducts pass less air at the same pressure: the blower works harder and the equipment may overheat or freeze.",
      nextMove: "Plan a larger return or filter, or open ducts, together with the sealing, and measure again after it.",
    },
  ];
}
