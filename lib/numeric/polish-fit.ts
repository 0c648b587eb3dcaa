import type { CurveProblem, FittedCurve } from "./fit-curve.ts";
import { solveLeastSquares } from "./solve-least-squares.ts";

const MOST_STEPS = 3000;
/** Relative step of the four-point difference: small beside any feature of a curve, large beside rounding. */
const DIFFERENCE_RATIO = 1e-4;
/** Steps this small beside the parameters end the search. */
const SMALL_STEP = 1e-12;
/** Data without noise: a sum of squares below this share of Σy² is met to seven digits, and there is no more to gain. */
const PERFECT_RATIO = 1e-14;
const LAST_STEPS = 4;
const SMALL_REFINEMENT = 1e-4;

interface Point {
  parameters: number[];
  residuals: number[];
  sumOfSquares: number;
}

function pointAt({ x, y, curve }: CurveProblem, parameters: number[]): Point {
  const valueAt = curve(parameters);
  const residuals = x.map((each, i) => y[i]! - valueAt(each));
  return { parameters, residuals, sumOfSquares: residuals.reduce((sum, each) => sum + each * each, 0) };
}

/**
 * Goes down to the least sum of squares near a start: Levenberg and Marquardt with the damping scaled by the columns of
 * the Jacobian, steps refused that do not go down, parameters held at their limits. The Jacobian is by central
 * differences, four points each. Null where the curve gives no numbers or the steps run out. Source: nist-strd.
 */
export function polishFit(problem: CurveProblem, start: readonly number[]): FittedCurve | null {
  const { y, lower, upper } = problem;
  const clamp = (value: number, i: number) =>
    Math.min(Math.max(value, lower?.[i] ?? Number.NEGATIVE_INFINITY), upper?.[i] ?? Number.POSITIVE_INFINITY);
  const at = (parameters: number[]) => pointAt(problem, parameters);
  let point = at(start.map(clamp));
  if (!Number.isFinite(point.sumOfSquares)) return null;
  const perfect = PERFECT_RATIO * y.reduce((sum, each) => sum + each * each, 0);
  let damping = 1e-3;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    if (point.sumOfSquares <= perfect) return summarize(problem, point);
    const columns = jacobian(problem, point.parameters);
    if (!columns.flat().every(Number.isFinite)) return null;
    const free = columns.map((column, i) => !isHeld(problem, point, column, i));
    let isMoved = false;
    for (; damping < 1e12; damping = Math.max(damping, 1e-15) * 10) {
      const move = dampedStep(columns, free, point.residuals, damping);
      const next = at(point.parameters.map((value, i) => clamp(value + move[i]!, i)));
      if (!(next.sumOfSquares <= point.sumOfSquares)) continue;
      const size = Math.max(...next.parameters.map((value, i) => relativeMove(value, point.parameters[i]!)));
      isMoved = size > SMALL_STEP && next.sumOfSquares < point.sumOfSquares;
      point = next;
      damping = damping < 1e-14 ? 0 : damping / 10;
      break;
    }
    if (isMoved) continue;
    return summarize(problem, refine(problem, point, at));
  }
  return null;
}

/** The sum of squares is too flat at its foot to guide the last digits: plain Gauss-Newton steps find them. */
function refine(problem: CurveProblem, found: Point, at: (parameters: number[]) => Point): Point {
  let point = found;
  for (let step = 0; step < LAST_STEPS; step += 1) {
    const columns = jacobian(problem, point.parameters);
    const free = columns.map((column, i) => !isHeld(problem, point, column, i));
    const move = dampedStep(columns, free, point.residuals, 0);
    const next = at(point.parameters.map((value, i) => value + move[i]!));
    const isSmall = next.parameters.every((value, i) => relativeMove(value, point.parameters[i]!) < SMALL_REFINEMENT);
    const isInside = next.parameters.every(
      (value, i) => value >= (problem.lower?.[i] ?? -Infinity) && value <= (problem.upper?.[i] ?? Infinity),
    );
    if (!(isSmall && isInside && next.sumOfSquares <= found.sumOfSquares * (1 + 1e-9))) return point;
    point = next;
  }
  return point;
}

const relativeMove = (to: number, from: number) =>
  to === from ? 0 : Math.abs(to - from) / Math.max(Math.abs(to), Math.abs(from));

/** A parameter at its limit that would rather lie beyond. */
function isHeld(
  { lower, upper }: CurveProblem,
  { parameters, residuals }: Point,
  column: readonly number[],
  i: number,
): boolean {
  const pull = column.reduce((sum, each, row) => sum + each * residuals[row]!, 0);
  return (parameters[i] === lower?.[i] && pull <= 0) || (parameters[i] === upper?.[i] && pull >= 0);
}

/** Solves [J; √damping·D]·step = [residuals; 0], D the lengths of the columns. */
function dampedStep(
  columns: readonly (readonly number[])[],
  free: readonly boolean[],
  residuals: readonly number[],
  damping: number,
): number[] {
  const used = columns.map((_, i) => i).filter((i) => free[i]);
  const lengths = used.map((i) => Math.hypot(...columns[i]!) || 1);
  const scaled = used.map((i, place) => [
    ...columns[i]!.map((each) => each / lengths[place]!),
    ...used.map((_, other) => (other === place ? Math.sqrt(damping) : 0)),
  ]);
  const solution = solveLeastSquares(scaled, [...residuals, ...used.map(() => 0)]).solution;
  const step = columns.map(() => 0);
  used.forEach((i, place) => {
    step[i] = solution[place]! / lengths[place]!;
  });
  return step;
}

/** How the curve moves with each parameter: one column a parameter, to the fourth order of the difference. */
function jacobian({ x, curve }: CurveProblem, parameters: readonly number[]): number[][] {
  return parameters.map((value, i) => {
    const step = DIFFERENCE_RATIO * (Math.abs(value) || 1);
    const at = (shift: number) => curve(parameters.map((each, j) => (j === i ? each + shift : each)));
    const [far, near, behind, farBehind] = [at(2 * step), at(step), at(-step), at(-2 * step)];
    return x.map((each) => (8 * (near(each) - behind(each)) - (far(each) - farBehind(each))) / (12 * step));
  });
}

/** Sum of squares and linear standard errors of a curve at parameters that were found elsewhere. */
export function describeFit(problem: CurveProblem, parameters: readonly number[]): FittedCurve {
  return summarize(problem, pointAt(problem, [...parameters]));
}

function summarize(problem: CurveProblem, point: Point): FittedCurve {
  const { parameters, residuals, sumOfSquares } = point;
  const columns = jacobian(problem, parameters);
  const used = columns.map((_, i) => i).filter((i) => !isHeld(problem, point, columns[i]!, i));
  const residualStandardDeviation = Math.sqrt(sumOfSquares / (problem.x.length - parameters.length));
  const lengths = used.map((i) => Math.hypot(...columns[i]!) || 1);
  const { inverseDiagonal } = solveLeastSquares(
    used.map((i, place) => columns[i]!.map((each) => each / lengths[place]!)),
    residuals,
  );
  const errors = parameters.map(() => 0);
  used.forEach((i, place) => {
    errors[i] = (residualStandardDeviation * Math.sqrt(inverseDiagonal[place]!)) / lengths[place]!;
  });
  const standardErrors = errors.every(Number.isFinite) ? errors : null;
  return { parameters, standardErrors, sumOfSquares, residualStandardDeviation };
}
