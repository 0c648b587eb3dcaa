import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { refuse } from "#lib/errors/input-problem.ts";
import { polishFit } from "./polish-fit.ts";

/** A curve y = f(x; parameters) to be fitted. */
export interface CurveProblem {
  x: readonly number[];
  y: readonly number[];
  curve: (parameters: readonly number[]) => (x: number) => number;
  /** Inclusive limits of each parameter. */
  lower?: readonly number[];
  upper?: readonly number[];
}

export interface FittedCurve {
  parameters: readonly number[];
  /** Linear standard errors, √diag(s²·(JᵀJ)⁻¹); null where the points do not tell the parameters apart. */
  standardErrors: readonly number[] | null;
  sumOfSquares: number;
  residualStandardDeviation: number;
}

/** No start led to a minimum. */
export class CurveNotFitted extends Error {
  override readonly name = "CurveNotFitted";
}

const LIBRARY_STEPS = 60;

/**
 * Nonlinear least squares from several starts; the lowest sum of squares wins.
 * Levenberg and Marquardt by the ml-levenberg-marquardt library in units of the start, since it damps every parameter
 * alike, then our own polish to the last digits. Valid with more points than parameters. Source: nist-strd (nonlinear
 * sets). Left out: weights.
 * @throws InputProblem with too few points, CurveNotFitted when no start leads to a minimum.
 */
export function fitCurve(problem: CurveProblem, starts: readonly (readonly number[])[]): FittedCurve {
  const { x, y } = problem;
  const count = starts[0]?.length ?? 0;
  if (!(x.length === y.length && x.length > count && count > 0)) {
    refuse({
      field: "points",
      detail: `${count} unknowns need more than ${count} points, not ${x.length}`,
      fix: "Add points.",
    });
  }
  let best: FittedCurve | null = null;
  for (const start of starts) {
    for (const from of [start, libraryFit(problem, start)]) {
      const fitted = from && polishFit(problem, from);
      if (fitted && (best === null || fitted.sumOfSquares < best.sumOfSquares)) best = fitted;
    }
  }
  if (best === null) throw new CurveNotFitted("No start led to a minimum");
  return best;
}

/** The library's answer, or null where its matrix turns singular or its numbers run away. */
function libraryFit({ x, y, curve, lower, upper }: CurveProblem, start: readonly number[]): number[] | null {
  const unit = start.map((value) => Math.abs(value) || 1);
  const inUnits = (values: readonly number[] | undefined) => values?.map((value, i) => value / unit[i]!);
  const [minValues, maxValues] = [inUnits(lower), inUnits(upper)];
  try {
    const { parameterValues } = levenbergMarquardt(
      { x: [...x], y: [...y] },
      (scaled: number[]) => curve(scaled.map((value, i) => value * unit[i]!)),
      {
        initialValues: start.map((value, i) => value / unit[i]!),
        ...(minValues && { minValues }),
        ...(maxValues && { maxValues }),
        maxIterations: LIBRARY_STEPS,
        gradientDifference: 1e-5,
        centralDifference: true,
        errorTolerance: 0,
      },
    );
    const parameters = parameterValues.map((value, i) => value * unit[i]!);
    return parameters.every(Number.isFinite) ? parameters : null;
  } catch {
    // The library throws plain errors for a singular matrix; the polish from the start itself still runs.
    return null;
  }
}
