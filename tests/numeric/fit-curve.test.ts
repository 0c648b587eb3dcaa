import { describe, expect, it } from "vitest";
import { CurveNotFitted, type CurveProblem, fitCurve } from "#lib/numeric/fit-curve.ts";
import { expectClose } from "#tests/expect-close.ts";
import sets from "#tests/reference/nist-strd/nonlinear.json" with { type: "json" };
import norris from "#tests/reference/nist-strd/norris.json" with { type: "json" };

const CURVES: Readonly<Record<string, CurveProblem["curve"]>> = {
  Misra1a:
    ([b1, b2]) =>
    (x) =>
      b1! * (1 - Math.exp(-b2! * x)),
  Chwirut2:
    ([b1, b2, b3]) =>
    (x) =>
      Math.exp(-b1! * x) / (b2! + b3! * x),
  Lanczos3:
    ([b1, b2, b3, b4, b5, b6]) =>
    (x) =>
      b1! * Math.exp(-b2! * x) + b3! * Math.exp(-b4! * x) + b5! * Math.exp(-b6! * x),
  MGH09:
    ([b1, b2, b3, b4]) =>
    (x) =>
      (b1! * (x * x + x * b2!)) / (x * x + x * b3! + b4!),
  MGH10:
    ([b1, b2, b3]) =>
    (x) =>
      b1! * Math.exp(b2! / (x + b3!)),
  Eckerle4:
    ([b1, b2, b3]) =>
    (x) =>
      (b1! / b2!) * Math.exp(-0.5 * ((x - b3!) / b2!) ** 2),
  Thurber:
    ([b1, b2, b3, b4, b5, b6, b7]) =>
    (x) =>
      (b1! + x * (b2! + x * (b3! + x * b4!))) / (1 + x * (b5! + x * (b6! + x * b7!))),
};
const problemOf = (set: (typeof sets)[number]): CurveProblem => ({ x: set.x, y: set.y, curve: CURVES[set.dataset]! });

describe("fitCurve against certified fits [nist-strd]", () => {
  const cases = sets.flatMap((set) => set.starts.map((start, i) => [set.dataset, i + 1, set, start] as const));
  const solvable = cases.filter(([dataset, start]) => !(dataset === "MGH10" && start === 1));

  it.each(solvable)("%s from start %i", (_, __, set, start) => {
    const fitted = fitCurve(problemOf(set), [start]);
    const reason = "certified to 11 digits; differences and flat minima leave 8";
    expectClose({ actual: fitted.sumOfSquares, expected: set.residualSumOfSquares, relativeTolerance: 1e-10, reason });
    expectClose({
      actual: fitted.residualStandardDeviation,
      expected: set.residualStandardDeviation,
      relativeTolerance: 1e-10,
      reason,
    });
    set.parameters.forEach((expected, i) => {
      expectClose({ actual: fitted.parameters[i]!, expected, relativeTolerance: 2e-8, reason });
      expectClose({
        actual: fitted.standardErrors![i]!,
        expected: set.standardDeviations[i]!,
        relativeTolerance: 2e-8,
        reason,
      });
    });
  });

  it("says so where a start does not lead to the minimum (MGH10 from its far start), and takes the other", () => {
    const set = sets.find((each) => each.dataset === "MGH10")!;
    expect(() => fitCurve(problemOf(set), [set.starts[0]!])).toThrow(CurveNotFitted);
    const fitted = fitCurve(problemOf(set), set.starts);
    expectClose({
      actual: fitted.parameters[0]!,
      expected: set.parameters[0]!,
      relativeTolerance: 2e-8,
      reason: "certified to 11 digits",
    });
  });

  it("holds the transcription of the data: the certified sum of squares follows from data and parameters", () => {
    for (const set of sets) {
      const valueAt = CURVES[set.dataset]!(set.parameters);
      const squares = set.x.reduce((sum, x, i) => sum + (set.y[i]! - valueAt(x)) ** 2, 0);
      expectClose({
        actual: squares,
        expected: set.residualSumOfSquares,
        relativeTolerance: 1e-6,
        reason: "parameters certified to 11 digits; small residuals of Lanczos3 lose some",
      });
    }
  });
});

describe("fitCurve", () => {
  const line: CurveProblem["curve"] =
    ([a, b]) =>
    (x) =>
      a! + b! * x;

  it("agrees with the line fit on Norris [nist-strd]", () => {
    const fitted = fitCurve({ x: norris.x, y: norris.y, curve: line }, [[0, 0.5]]);
    const { certified } = norris;
    const reason = "certified to 15 digits; central differences leave 9";
    expectClose({ actual: fitted.parameters[0]!, expected: certified.intercept, relativeTolerance: 1e-8, reason });
    expectClose({ actual: fitted.parameters[1]!, expected: certified.slope, relativeTolerance: 1e-9, reason });
    expectClose({
      actual: fitted.standardErrors![0]!,
      expected: certified.standardDeviationOfIntercept,
      relativeTolerance: 1e-8,
      reason,
    });
  });

  it("holds parameters inside their limits, and is best there", () => {
    const problem = { x: [0, 1, 2, 3], y: [-1, 0, 1, 2], curve: line, lower: [0, 0], upper: [10, 10] };
    const fitted = fitCurve(problem, [[1, 1]]);
    expect(fitted.parameters[0]).toBe(0);
    // With a held at 0: b = Σxy/Σx² = 8/14.
    expectClose({ actual: fitted.parameters[1]!, expected: 8 / 14, relativeTolerance: 1e-9, reason: "worked by hand" });
  });

  it("gives no standard errors where the points cannot tell two parameters apart", () => {
    const twins: CurveProblem["curve"] =
      ([a, b]) =>
      (x) =>
        (a! + b!) * x;
    expect(fitCurve({ x: [1, 2, 3], y: [2.1, 3.9, 6.2], curve: twins }, [[1, 1]]).standardErrors).toBeNull();
  });

  it("refuses too few points, and says so when the curve gives no numbers", () => {
    expect(() => fitCurve({ x: [1, 2], y: [1, 2], curve: line }, [[0, 1]])).toThrow("more than 2 points");
    expect(() => fitCurve({ x: [1, 2, 3], y: [1, 2, 3], curve: () => () => Number.NaN }, [[0, 1]])).toThrow(
      CurveNotFitted,
    );
  });
});
