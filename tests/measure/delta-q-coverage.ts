import { type DeltaQFit, deltaQFit } from "#lib/measure/delta-q-fit.ts";
import { type DeltaQLeaks, type DeltaQPoint, deltaQModel } from "#lib/measure/delta-q-model.ts";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";

const PRESSURES_PA = Array.from({ length: 21 }, (_, i) => -50 + 5 * i);

/** Readings without noise, every 5 Pa from −50 to 50. */
export function readingsOf(leaks: DeltaQLeaks, exponent: number): DeltaQPoint[] {
  const { deltaFlowsCfm } = deltaQModel({ ...leaks, envelopePressuresPa: PRESSURES_PA, exponent });
  return PRESSURES_PA.map((envelopePressurePa, i) => ({ envelopePressurePa, deltaFlowCfm: deltaFlowsCfm[i]! }));
}

/** How often the error bars of both leaks hold the truth, over houses that differ in noise alone. */
export function coverageOf({
  leaks,
  noiseCfm,
  houses,
  seed,
}: {
  leaks: DeltaQLeaks;
  noiseCfm: number;
  houses: number;
  seed: number;
}): { withinOneSigma: number; within95: number } {
  const source = createDrawSource(seed);
  const noise = new Float64Array(PRESSURES_PA.length);
  const exact = readingsOf(leaks, 0.6);
  let oneSigma = 0;
  let ninetyFive = 0;
  const isBetween = (low: number, value: number, high: number) => value >= low && value <= high;
  for (let house = 0; house < houses; house += 1) {
    source.fillNormals(house, noise);
    const points = exact.map((point, i) => ({ ...point, deltaFlowCfm: point.deltaFlowCfm + noiseCfm * noise[i]! }));
    const fit: DeltaQFit = deltaQFit({ points });
    for (const name of ["supplyLeakageCfm", "returnLeakageCfm"] as const) {
      if (Math.abs(fit[name] - leaks[name]) <= fit.standardErrors[name]) oneSigma += 1;
    }
    if (isBetween(fit.supplyLeakageLowCfm, leaks.supplyLeakageCfm, fit.supplyLeakageHighCfm)) ninetyFive += 1;
    if (isBetween(fit.returnLeakageLowCfm, leaks.returnLeakageCfm, fit.returnLeakageHighCfm)) ninetyFive += 1;
  }
  return { withinOneSigma: oneSigma / (2 * houses), within95: ninetyFive / (2 * houses) };
}
