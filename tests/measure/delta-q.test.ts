import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deltaQFit } from "#lib/measure/delta-q-fit.ts";
import { deltaQModel } from "#lib/measure/delta-q-model.ts";
import { expectClose } from "#tests/expect-close.ts";
import { coverageOf, readingsOf } from "./delta-q-coverage.ts";

const truth = { supplyLeakageCfm: 120, returnLeakageCfm: 80, supplyPressurePa: 40, returnPressurePa: 60 };
const drawnLeaks = fc.record({
  supplyLeakageCfm: fc.double({ min: 20, max: 400, noNaN: true }),
  returnLeakageCfm: fc.double({ min: 20, max: 400, noNaN: true }),
  supplyPressurePa: fc.double({ min: 15, max: 120, noNaN: true }),
  returnPressurePa: fc.double({ min: 15, max: 120, noNaN: true }),
});
const exponent = fc.double({ min: 0.5, max: 0.8, noNaN: true });

describe("deltaQModel", () => {
  it("reads supply less return leakage at no envelope pressure, and follows both leaks in proportion [derived]", () => {
    fc.assert(
      fc.property(drawnLeaks, exponent, fc.double({ min: 0.1, max: 5, noNaN: true }), (leaks, n, k) => {
        const at = (pressurePa: number, scale: number) =>
          deltaQModel({
            ...leaks,
            supplyLeakageCfm: scale * leaks.supplyLeakageCfm,
            returnLeakageCfm: scale * leaks.returnLeakageCfm,
            envelopePressuresPa: [pressurePa],
            exponent: n,
          }).deltaFlowsCfm[0]!;
        expect(at(0, 1)).toBeCloseTo(leaks.supplyLeakageCfm - leaks.returnLeakageCfm, 9);
        expect(at(-20, k)).toBeCloseTo(k * at(-20, 1), 7);
      }),
    );
  });

  it("turns over when supply and return and the sign of the pressure change places [derived: mirror image]", () => {
    fc.assert(
      fc.property(drawnLeaks, exponent, fc.double({ min: -80, max: 80, noNaN: true }), (leaks, n, pressurePa) => {
        const forward = deltaQModel({ ...leaks, envelopePressuresPa: [pressurePa], exponent: n }).deltaFlowsCfm[0]!;
        const mirrored = deltaQModel({
          supplyLeakageCfm: leaks.returnLeakageCfm,
          returnLeakageCfm: leaks.supplyLeakageCfm,
          supplyPressurePa: leaks.returnPressurePa,
          returnPressurePa: leaks.supplyPressurePa,
          envelopePressuresPa: [-pressurePa],
          exponent: n,
        }).deltaFlowsCfm[0]!;
        expect(mirrored).toBeCloseTo(-forward, 8);
      }),
    );
  });

  it("refuses leaks below zero and pressures that are none", () => {
    const read = (change: Partial<typeof truth>) => () =>
      deltaQModel({ ...truth, ...change, envelopePressuresPa: [0] });
    expect(read({ supplyLeakageCfm: -1 })).toThrow("#/supplyLeakageCfm");
    expect(read({ returnPressurePa: 0 })).toThrow("#/returnPressurePa");
    expect(read({ supplyPressurePa: Number.NaN })).toThrow("#/supplyPressurePa");
    expect(() => deltaQModel({ ...truth, envelopePressuresPa: [0, Number.NaN] })).toThrow("#/envelopePressuresPa/1");
  });
});

describe("deltaQFit", () => {
  it("returns the leaks that exact readings were made from [derived]", () => {
    fc.assert(
      fc.property(drawnLeaks, exponent, (leaks, n) => {
        const fit = deltaQFit({ points: readingsOf(leaks, n), exponent: n });
        for (const name of ["supplyLeakageCfm", "returnLeakageCfm"] as const) {
          expectClose({
            actual: fit[name],
            expected: leaks[name],
            relativeTolerance: 0.001,
            reason: "no noise; the valley between leaks and pressures is flat",
          });
        }
      }),
      { numRuns: 12, seed: 4 },
    );
  });

  it("scales with its readings: twice the flows, twice the leaks and their errors, the same pressures", () => {
    const noise = (i: number) => 5 * Math.sin(7 * i);
    const points = readingsOf(truth, 0.6).map((point, i) => ({
      ...point,
      deltaFlowCfm: point.deltaFlowCfm + noise(i),
    }));
    const once = deltaQFit({ points });
    const twice = deltaQFit({ points: points.map((point) => ({ ...point, deltaFlowCfm: 2 * point.deltaFlowCfm })) });
    const reason = "the same minimum, scaled; found to a few digits along a flat valley";
    const pairs = [
      [twice.supplyLeakageCfm, 2 * once.supplyLeakageCfm],
      [twice.returnLeakageCfm, 2 * once.returnLeakageCfm],
      [twice.supplyPressurePa, once.supplyPressurePa],
      [twice.standardErrors.supplyLeakageCfm, 2 * once.standardErrors.supplyLeakageCfm],
    ] as const;
    for (const [actual, expected] of pairs) expectClose({ actual, expected, relativeTolerance: 1e-4, reason });
  });

  it("has error bars that cover about as often as they claim, with noise of a blower door [derived]", () => {
    const { withinOneSigma, within95 } = coverageOf({ leaks: truth, noiseCfm: 8, houses: 40, seed: 3 });
    // Of 80 intervals, 95 % leave out 4; leaving out 13 or more happens once in ten thousand.
    expect(within95).toBeGreaterThan(1 - 13 / 80);
    expect(withinOneSigma).toBeGreaterThan(0.5);
    expect(withinOneSigma).toBeLessThan(0.93);
  });

  it("says so when a leak cannot be told from none", () => {
    const small = { ...truth, returnLeakageCfm: 3 };
    const noise = (i: number) => 12 * Math.sin(5 * i + 1);
    const points = readingsOf(small, 0.6).map((point, i) => ({
      ...point,
      deltaFlowCfm: point.deltaFlowCfm + noise(i),
    }));
    expect(deltaQFit({ points }).notes.map((note) => note.code)).toContain("return-within-doubt");
    expect(deltaQFit({ points: readingsOf(truth, 0.6), airHandlerFlowCfm: 1000 }).notes).toEqual([]);
  });

  it("adds the model's own doubt, 1.3 % of the fan flow, and says so where it cannot [lbnl-delta-q]", () => {
    const truth = { supplyLeakageCfm: 120, returnLeakageCfm: 80, supplyPressurePa: 40, returnPressurePa: 60 };
    const points = readingsOf(truth, 0.6);
    const [without, withFlow] = [deltaQFit({ points }), deltaQFit({ points, airHandlerFlowCfm: 1000 })];
    expect(without.notes.map(({ code }) => code)).toEqual(["model-doubt-left-out"]);
    expect(withFlow.supplyLeakageCfm).toBe(without.supplyLeakageCfm);
    // Exact readings leave nothing else: 13 cfm, and 1.96 of them each way in an interval of 95 %.
    for (const [error, low, high, leak] of [
      [withFlow.standardErrors.supplyLeakageCfm, withFlow.supplyLeakageLowCfm, withFlow.supplyLeakageHighCfm, 120],
      [withFlow.standardErrors.returnLeakageCfm, withFlow.returnLeakageLowCfm, withFlow.returnLeakageHighCfm, 80],
    ] as const) {
      expect(error).toBeCloseTo(13, 1);
      expect(leak - low).toBeCloseTo(25.5, 0);
      expect(high - leak).toBeCloseTo(25.5, 0);
    }
    expect(() => deltaQFit({ points, airHandlerFlowCfm: Number.NaN })).toThrow("#/airHandlerFlowCfm");
  });

  it("refuses too few readings, one sign only, and what is no number", () => {
    const points = readingsOf(truth, 0.6);
    expect(() => deltaQFit({ points: points.slice(0, 4) })).toThrow("at least 5");
    expect(() => deltaQFit({ points: points.filter((point) => point.envelopePressurePa > 0) })).toThrow("same sign");
    expect(() => deltaQFit({ points: [...points, { envelopePressurePa: 3, deltaFlowCfm: Number.NaN }] })).toThrow(
      `#/points/${points.length}/deltaFlowCfm`,
    );
  });
});
