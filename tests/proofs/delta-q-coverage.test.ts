import { describe, expect, it } from "vitest";
import { coverageOf } from "#tests/measure/delta-q-coverage.ts";

/** Leaks large and small, on either side, at high and low pressures, with calm and rough noise. */
const CASES = [
  { leaks: { supplyLeakageCfm: 120, returnLeakageCfm: 80, supplyPressurePa: 40, returnPressurePa: 60 }, noiseCfm: 4 },
  { leaks: { supplyLeakageCfm: 120, returnLeakageCfm: 80, supplyPressurePa: 40, returnPressurePa: 60 }, noiseCfm: 15 },
  { leaks: { supplyLeakageCfm: 60, returnLeakageCfm: 150, supplyPressurePa: 90, returnPressurePa: 25 }, noiseCfm: 8 },
  { leaks: { supplyLeakageCfm: 30, returnLeakageCfm: 12, supplyPressurePa: 50, returnPressurePa: 50 }, noiseCfm: 8 },
];

describe("error bars of the Delta-Q fit over 500 houses a case [derived]", () => {
  it.each(CASES)("cover as often as they claim at $noiseCfm cfm of noise: $leaks", ({ leaks, noiseCfm }) => {
    const { withinOneSigma, within95 } = coverageOf({ leaks, noiseCfm, houses: 500, seed: 11 });
    console.info(`one sigma ${(100 * withinOneSigma).toFixed(1)} %, 95 % interval ${(100 * within95).toFixed(1)} %`);
    expect(within95).toBeGreaterThan(0.92);
    expect(withinOneSigma).toBeGreaterThan(0.6);
    expect(withinOneSigma).toBeLessThan(0.85);
  });
});
