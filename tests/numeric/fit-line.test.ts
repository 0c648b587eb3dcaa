import fc from "fast-check";
import { linearRegression } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { fitLine } from "#lib/numeric/fit-line.ts";
import { expectClose } from "#tests/expect-close.ts";
import norris from "#tests/reference/nist-strd/norris.json" with { type: "json" };

describe("fitLine", () => {
  const fitted = fitLine(norris);

  it.each(["intercept", "slope", "residualStandardDeviation", "rSquared"] as const)(
    "gives the certified %s of Norris [nist-strd]",
    (name) => {
      expectClose({
        actual: fitted[name],
        expected: norris.certified[name],
        relativeTolerance: 1e-11,
        reason: "certified to 15 digits; doubles keep 11 through the sums",
      });
    },
  );

  it("gives the certified standard deviations of Norris [nist-strd]", () => {
    const { residualStandardDeviation, squaresX, meanX, count } = fitted;
    const reason = "certified to 15 digits; doubles keep 11 through the sums";
    expectClose({
      actual: residualStandardDeviation / Math.sqrt(squaresX),
      expected: norris.certified.standardDeviationOfSlope,
      relativeTolerance: 1e-11,
      reason,
    });
    expectClose({
      actual: residualStandardDeviation * Math.sqrt(1 / count + meanX ** 2 / squaresX),
      expected: norris.certified.standardDeviationOfIntercept,
      relativeTolerance: 1e-11,
      reason,
    });
  });

  it("agrees with an independent library, and keeps its digits far from zero", () => {
    const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: -1000, max: 1000 })), {
      minLength: 3,
      maxLength: 20,
    });
    fc.assert(
      fc.property(points, (drawn) => {
        fc.pre(new Set(drawn.map(([x]) => x)).size > 1);
        const near = fitLine({ x: drawn.map(([x]) => x), y: drawn.map(([, y]) => y) });
        const far = fitLine({ x: drawn.map(([x]) => x + 1e6), y: drawn.map(([, y]) => y) });
        const other = linearRegression(drawn);
        expect(Math.abs(near.slope - other.m)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(other.m)));
        expect(Math.abs(near.slope - far.slope)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(near.slope)));
      }),
    );
  });

  it("refuses two points, points at one x, and numbers that are none", () => {
    expect(() => fitLine({ x: [1, 2], y: [1, 2] })).toThrow("at least 3");
    expect(() => fitLine({ x: [1, 1, 1], y: [1, 2, 3] })).toThrow("do not differ");
    expect(() => fitLine({ x: [1, 2, Number.NaN], y: [1, 2, 3] })).toThrow();
    expect(() => fitLine({ x: [1, 2, 3], y: [1, 2, Number.NaN] })).toThrow();
  });
});
