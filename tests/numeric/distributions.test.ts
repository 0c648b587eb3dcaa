import fc from "fast-check";
import { quantileSorted as independentQuantile } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { normalCdf, normalQuantile, studentTQuantile } from "#lib/numeric/distributions.ts";
import { quantileOfSorted } from "#lib/numeric/quantile.ts";
import { expectClose } from "#tests/expect-close.ts";

describe("normal and Student distributions", () => {
  it.each([
    [0.9, 1.2815515655],
    [0.95, 1.644853627],
    [0.975, 1.9599639845],
    [0.995, 2.5758293035],
  ])("normal quantile of %f is %f (published tables, from memory)", (probability, expected) => {
    const reason = "tables to 10 figures";
    expectClose({ actual: normalQuantile(probability), expected, relativeTolerance: 1e-10, reason });
    expectClose({ actual: normalQuantile(1 - probability), expected: -expected, relativeTolerance: 1e-10, reason });
    expectClose({ actual: normalCdf(expected), expected: probability, relativeTolerance: 1e-10, reason });
  });

  it.each([
    [1, 0.975, 12.706],
    [2, 0.975, 4.303],
    [5, 0.975, 2.571],
    [10, 0.95, 1.812],
    [30, 0.995, 2.75],
  ])(
    "Student's t with %i degrees of freedom at %f is %f (JCGM 100 table G.2)",
    (degreesOfFreedom, probability, expected) => {
      expectClose({
        actual: studentTQuantile({ probability, degreesOfFreedom }),
        expected,
        relativeTolerance: 3e-4,
        reason: "table printed to 3 decimals",
      });
    },
  );

  it("refuses what is no probability, no z, no degrees of freedom", () => {
    for (const bad of [0, 1, -0.1, 1.1, Number.NaN]) {
      expect(() => normalQuantile(bad)).toThrow("probability");
      expect(() => studentTQuantile({ probability: bad, degreesOfFreedom: 5 })).toThrow("probability");
    }
    expect(() => studentTQuantile({ probability: 0.9, degreesOfFreedom: 0 })).toThrow("Degrees of freedom");
    expect(() => normalCdf(Number.NaN)).toThrow("z must be a number");
  });
});

describe("quantileOfSorted", () => {
  it("interpolates between order statistics (type 7, worked by hand)", () => {
    const sample = Float64Array.of(1, 2, 4, 8);
    expect(quantileOfSorted(sample, 0)).toBe(1);
    expect(quantileOfSorted(sample, 0.5)).toBe(3);
    expect(quantileOfSorted(sample, 0.9)).toBeCloseTo(6.8, 12);
    expect(quantileOfSorted(sample, 1)).toBe(8);
  });

  it("agrees with an independent library at the median and lies within the sample", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 50 }),
        (values) => {
          const sorted = Float64Array.from(values).sort();
          expect(quantileOfSorted(sorted, 0.5)).toBeCloseTo(independentQuantile([...sorted], 0.5), 6);
          for (const share of [0.1, 0.33, 0.9]) {
            expect(quantileOfSorted(sorted, share)).toBeGreaterThanOrEqual(sorted[0]!);
            expect(quantileOfSorted(sorted, share)).toBeLessThanOrEqual(sorted.at(-1)!);
          }
        },
      ),
    );
  });

  it("refuses an empty sample and a share outside 0 to 1", () => {
    expect(() => quantileOfSorted(new Float64Array(0), 0.5)).toThrow("empty");
    for (const share of [-0.1, 1.1, Number.NaN])
      expect(() => quantileOfSorted(Float64Array.of(1), share)).toThrow("share");
  });
});
