import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blowerDoorSubtraction } from "#lib/measure/blower-door-subtraction.ts";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import { expectClose } from "#tests/expect-close.ts";

const before = { wholeHouseCfm50: 4800, envelopeCfm50: 4500, ductToHousePressurePa: 45 };
const after = { wholeHouseCfm50: 4600, envelopeCfm50: 4500, ductToHousePressurePa: 43 };

describe("blowerDoorSubtraction", () => {
  it("leaves a difference of 248 ± 369 cfm between two tests: it cannot tell them apart [derived]", () => {
    const [first, second] = [blowerDoorSubtraction(before), blowerDoorSubtraction(after)];
    expectClose({
      actual: first.leakageToOutsideCfm50 - second.leakageToOutsideCfm50,
      expected: 248,
      relativeTolerance: 0.002,
      reason: "stated to 3 figures",
    });
    expectClose({
      actual: Math.hypot(first.standardUncertaintyCfm50, second.standardUncertaintyCfm50),
      expected: 369,
      relativeTolerance: 0.002,
      reason: "stated to 3 figures",
    });
    expect(first.notes[0]!.code).toBe("difference-within-doubt");
  });

  it("agrees with a Monte Carlo of its own inputs [jcgm-101]", () => {
    const input = { wholeHouseCfm50: 3000, envelopeCfm50: 2000, ductToHousePressurePa: 35 };
    const source = createDrawSource(9);
    const normals = new Float64Array(3);
    const values = Array.from({ length: 20000 }, (_, draw) => {
      source.fillNormals(draw, normals);
      return blowerDoorSubtraction({
        wholeHouseCfm50: 3000 * (1 + 0.03 * normals[0]!),
        envelopeCfm50: 2000 * (1 + 0.03 * normals[1]!),
        ductToHousePressurePa: 35 + normals[2]!,
      }).leakageToOutsideCfm50;
    });
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
    expectClose({
      actual: blowerDoorSubtraction(input).standardUncertaintyCfm50,
      expected: sd,
      relativeTolerance: 0.025,
      reason: "20,000 draws leave half a percent; the correction is slightly curved",
    });
  });

  it("is surer when one fan's error is in both flows", () => {
    const independent = blowerDoorSubtraction(before).standardUncertaintyCfm50;
    expect(blowerDoorSubtraction({ ...before, flowCorrelation: 0.9 }).standardUncertaintyCfm50).toBeLessThan(
      independent / 2,
    );
  });

  it("carries to 25 Pa by the envelope's exponent: 0.637 of the value at 50 Pa [derived]", () => {
    const { leakageToOutsideCfm25, leakageToOutsideCfm50 } = blowerDoorSubtraction(before);
    expectClose({
      actual: leakageToOutsideCfm25 / leakageToOutsideCfm50,
      expected: 0.637,
      relativeTolerance: 8e-4,
      reason: "stated to 3 figures",
    });
  });

  it("corrects more the less the sealed ducts follow the outside, and never below 1", () => {
    fc.assert(
      fc.property(fc.double({ min: 15, max: 49.9, noNaN: true }), (pressurePa) => {
        const at = (ductToHousePressurePa: number) => blowerDoorSubtraction({ ...before, ductToHousePressurePa });
        expect(at(pressurePa).correctionFactor).toBeGreaterThanOrEqual(1);
        expect(at(pressurePa + 0.1).correctionFactor).toBeLessThan(at(pressurePa).correctionFactor);
        expect(at(-pressurePa)).toEqual(at(pressurePa));
        expect(Number.isFinite(at(50).standardUncertaintyCfm50)).toBe(true);
      }),
    );
  });

  it("refuses under 15 Pa, above 50 Pa, swapped flows and what is no number", () => {
    for (const ductToHousePressurePa of [14.9, 0, 51, Number.NaN]) {
      expect(() => blowerDoorSubtraction({ ...before, ductToHousePressurePa })).toThrow("#/ductToHousePressurePa");
    }
    expect(() => blowerDoorSubtraction({ ...before, envelopeCfm50: 4900 })).toThrow("raised the flow");
    expect(() => blowerDoorSubtraction({ ...before, wholeHouseCfm50: Number.NaN })).toThrow("#/wholeHouseCfm50");
    expect(() => blowerDoorSubtraction({ ...before, flowCorrelation: 2 })).toThrow("#/flowCorrelation");
  });

  it("gives no leakage for no difference, and says that it cannot be told", () => {
    const none = blowerDoorSubtraction({ ...before, envelopeCfm50: 4800 });
    expect(none.leakageToOutsideCfm50).toBe(0);
    expect(none.notes).toHaveLength(1);
    expect(none.told).toBeUndefined();
    // One-sided 95 % of a normal distribution lies below 1.645 standard uncertainties.
    expect(none.leakageHighCfm50 / none.standardUncertaintyCfm50).toBeCloseTo(1.645, 3);
    const large = blowerDoorSubtraction({ wholeHouseCfm50: 3000, envelopeCfm50: 1500, ductToHousePressurePa: 45 });
    expect(large.notes).toEqual([]);
    expect(large.told!.leakageCfm50 / large.leakageToOutsideCfm50).toBeCloseTo(1, 3);
  });

  it("is freed from the bias of telling only what chance made large, and more doubtful for it", () => {
    // 10 % of the house's flow, at 3 % each: a little above twice its doubt.
    const near = blowerDoorSubtraction({ wholeHouseCfm50: 3000, envelopeCfm50: 2700, ductToHousePressurePa: 48 });
    expect(near.leakageToOutsideCfm50 / near.standardUncertaintyCfm50).toBeGreaterThan(2);
    const { leakageCfm50, leakageCfm25, standardUncertaintyCfm25 } = near.told!;
    expect(leakageCfm50).toBeLessThan(near.leakageToOutsideCfm50);
    expect(standardUncertaintyCfm25 / leakageCfm25).toBeGreaterThan(
      near.standardUncertaintyCfm50 / near.leakageToOutsideCfm50,
    );
  });
});
