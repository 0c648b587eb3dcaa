import { describe, expect, it } from "vitest";
import { gaussianPosterior } from "#lib/numeric/gaussian-posterior.ts";
import { solveLinearSystem } from "#lib/numeric/solve-linear-system.ts";
import { expectClose } from "#tests/expect-close.ts";

const A = [
  [4, 1, 0.5],
  [1, 3, -0.2],
  [0.5, -0.2, 2],
];
const B = [1, -2, 3];
const rounding = { relativeTolerance: 1e-12, reason: "the same linear algebra another way" } as const;

describe("normal posterior of a few coefficients", () => {
  it("derived: mean by elimination, variances as the diagonal of the inverse, determinant by its expansion", () => {
    const posterior = gaussianPosterior(A, B)!;
    solveLinearSystem(A, B)!.forEach((expected, i) => {
      expectClose({ actual: posterior.mean[i]!, expected, ...rounding });
    });
    posterior.variances.forEach((actual, i) => {
      const unit = [0, 0, 0].map((_, k) => (k === i ? 1 : 0));
      expectClose({ actual, expected: solveLinearSystem(A, unit)![i]!, ...rounding });
    });
    const determinant = 4 * (3 * 2 - 0.04) - 1 * (1 * 2 + 0.1) + 0.5 * (-0.2 - 1.5);
    expectClose({ actual: posterior.logDeterminant, expected: Math.log(determinant), ...rounding });
  });

  it("jcgm-101 form: one unknown with a normal prior is the mean weighted by what is known", () => {
    // Prior 10 ± 2, three readings of 13, 14, 15 with ± 1 each: precision 1/4 + 3, mean (10/4 + 42)/(3.25).
    const posterior = gaussianPosterior([[0.25 + 3]], [10 / 4 + 42])!;
    expectClose({ actual: posterior.mean[0]!, expected: 44.5 / 3.25, ...rounding });
    expectClose({ actual: posterior.variances[0]!, expected: 1 / 3.25, ...rounding });
  });

  it("says so where the precision tells nothing of a direction", () => {
    expect(
      gaussianPosterior(
        [
          [1, 1],
          [1, 1],
        ],
        [1, 1],
      ),
    ).toBeNull();
  });
});
