import { refuse } from "#lib/errors/input-problem.ts";

export interface FittedLine {
  intercept: number;
  slope: number;
  residualStandardDeviation: number;
  rSquared: number;
  meanX: number;
  /** Σ(x − x̄)². */
  squaresX: number;
  count: number;
}

/**
 * The line that least squares draws through points.
 * slope = Σ(x − x̄)(y − ȳ)/Σ(x − x̄)², residual sd with count − 2. Valid from 3 points at two or more x. Source:
 * nist-strd (Norris, to 12 digits). Sums are taken about the means, so that large x lose no digits.
 * @throws InputProblem with fewer than 3 points, or all at one x.
 */
export function fitLine({ x, y }: { x: readonly number[]; y: readonly number[] }): FittedLine {
  const count = x.length;
  if (!(count >= 3 && y.length === count)) {
    refuse({ field: "points", detail: `A line needs at least 3 points, not ${count}`, fix: "Add points." });
  }
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / count;
  const meanX = mean(x);
  const meanY = mean(y);
  let squaresX = 0;
  let products = 0;
  let squaresY = 0;
  for (let i = 0; i < count; i += 1) {
    const offsetX = x[i]! - meanX;
    const offsetY = y[i]! - meanY;
    squaresX += offsetX * offsetX;
    products += offsetX * offsetY;
    squaresY += offsetY * offsetY;
  }
  if (!(squaresX > 0 && Number.isFinite(products) && Number.isFinite(squaresY))) {
    refuse({
      field: "points",
      detail: "The points do not differ in x",
      fix: "Read at two or more different settings.",
    });
  }
  const slope = products / squaresX;
  const intercept = meanY - slope * meanX;
  let residualSquares = 0;
  for (let i = 0; i < count; i += 1) {
    const residual = y[i]! - meanY - slope * (x[i]! - meanX);
    residualSquares += residual * residual;
  }
  return {
    intercept,
    slope,
    residualStandardDeviation: Math.sqrt(residualSquares / (count - 2)),
    rSquared: squaresY > 0 ? 1 - residualSquares / squaresY : 1,
    meanX,
    squaresX,
    count,
  };
}
