import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { powerLawFit } from "#lib/measure/power-law-fit.ts";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import { expectClose } from "#tests/expect-close.ts";

const PRESSURES_PA = [10, 15, 20, 25, 30, 40, 50];
const curve = (coefficient: number, exponent: number) =>
  PRESSURES_PA.map((pressurePa) => ({ pressurePa, flowCfm: coefficient * pressurePa ** exponent }));

describe("powerLawFit", () => {
  it("returns the curve that exact readings lie on, with an interval of nothing [derived]", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 200, noNaN: true }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        (coefficient, exponent) => {
          const fit = powerLawFit({ points: curve(coefficient, exponent) });
          const reason = "exact points, logarithms of doubles";
          expectClose({ actual: fit.coefficient, expected: coefficient, relativeTolerance: 1e-11, reason });
          expectClose({ actual: fit.exponent, expected: exponent, relativeTolerance: 1e-11, reason });
          expectClose({
            actual: fit.leakageCfm,
            expected: coefficient * 25 ** exponent,
            relativeTolerance: 1e-11,
            reason,
          });
          expectClose({ actual: fit.leakageHighCfm, expected: fit.leakageLowCfm, relativeTolerance: 1e-9, reason });
        },
      ),
    );
  });

  it("scales with its flows", () => {
    const wobbly = curve(25, 0.6).map((point, i) => ({
      ...point,
      flowCfm: point.flowCfm * (1 + 0.02 * Math.sin(3 * i)),
    }));
    const once = powerLawFit({ points: wobbly });
    const thrice = powerLawFit({ points: wobbly.map((point) => ({ ...point, flowCfm: 3 * point.flowCfm })) });
    const reason = "logarithms shift, nothing else";
    expectClose({ actual: thrice.leakageLowCfm, expected: 3 * once.leakageLowCfm, relativeTolerance: 1e-11, reason });
    expectClose({ actual: thrice.exponentHigh, expected: once.exponentHigh, relativeTolerance: 1e-11, reason });
  });

  it("has an interval that covers the truth as often as it claims [derived: simulated readings]", () => {
    const source = createDrawSource(2);
    const noise = new Float64Array(PRESSURES_PA.length);
    let covered = 0;
    for (let test = 0; test < 2000; test += 1) {
      source.fillNormals(test, noise);
      const points = curve(25, 0.6).map((point, i) => ({
        ...point,
        flowCfm: point.flowCfm * Math.exp(0.03 * noise[i]!),
      }));
      const { leakageLowCfm, leakageHighCfm } = powerLawFit({ points, confidence: 0.9 });
      if (leakageLowCfm <= 25 * 25 ** 0.6 && 25 * 25 ** 0.6 <= leakageHighCfm) covered += 1;
    }
    // 90 % of 2,000 with a standard deviation of 13.4.
    expect(Math.abs(covered - 1800)).toBeLessThan(45);
  });

  it("notes an exponent that no leak has, scatter and few points, and nothing else", () => {
    const codes = (points: { pressurePa: number; flowCfm: number }[]) =>
      powerLawFit({ points }).notes.map((note) => note.code);
    expect(codes(curve(25, 0.6))).toEqual([]);
    expect(codes(curve(25, 1.2))).toEqual(["exponent-outside-range"]);
    expect(codes(curve(25, 0.4))).toEqual(["exponent-outside-range"]);
    expect(codes(curve(25, 0.6).slice(0, 4))).toEqual(["few-points"]);
    const scattered = curve(25, 0.6).map((point, i) => ({ ...point, flowCfm: point.flowCfm * (i % 2 ? 1.15 : 0.87) }));
    expect(codes(scattered)).toContain("fit-scatters");
  });

  it("refuses two points, one pressure, signs, pressure and flow swapped, and pressures too close to tell", () => {
    expect(() => powerLawFit({ points: curve(25, 0.6).slice(0, 2) })).toThrow("at least 3");
    expect(() => powerLawFit({ points: [1, 2, 3].map((flowCfm) => ({ pressurePa: 25, flowCfm })) })).toThrow(
      "do not differ",
    );
    expect(() => powerLawFit({ points: [...curve(25, 0.6), { pressurePa: -25, flowCfm: 170 }] })).toThrow(
      "#/points/7/pressurePa",
    );
    expect(() => powerLawFit({ points: [...curve(25, 0.6), { pressurePa: 25, flowCfm: Number.NaN }] })).toThrow(
      "#/points/7/flowCfm",
    );
    expect(() => powerLawFit({ points: curve(25, -0.6) })).toThrow("does not rise");
    const huddled = [100, 101, 103].map((flowCfm, i) => ({ pressurePa: 50 + i * 1e-3, flowCfm }));
    expect(() => powerLawFit({ points: huddled, referencePressurePa: 5 })).toThrow("close together");
  });
});
