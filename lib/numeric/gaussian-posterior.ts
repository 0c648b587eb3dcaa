/** What is known of a few coefficients: their most likely values and how they are uncertain together. */
export interface GaussianPosterior {
  mean: number[];
  /** Variance of each, the others left open. */
  variances: number[];
  logDeterminant: number;
}

/**
 * The normal distribution with precision A and A·mean = b: what least squares with normal priors leaves.
 * A = L Lᵀ; mean and variances by solving with L; ln|A| = 2 Σ ln L_ii. Source: derived (Cholesky).
 * Valid for a symmetric A with positive eigenvalues. For a handful of coefficients.
 * @returns null where A is not positive definite: data and priors do not tell the coefficients.
 */
export function gaussianPosterior(
  precision: readonly (readonly number[])[],
  right: readonly number[],
): GaussianPosterior | null {
  const size = right.length;
  const lower = precision.map((row) => [...row]);
  let logDeterminant = 0;
  for (let j = 0; j < size; j += 1) {
    for (let i = j; i < size; i += 1) {
      let sum = precision[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= lower[i]![k]! * lower[j]![k]!;
      if (i === j && !(sum > 0)) return null;
      lower[i]![j] = i === j ? Math.sqrt(sum) : sum / lower[j]![j]!;
    }
    logDeterminant += 2 * Math.log(lower[j]![j]!);
  }
  const solve = (side: readonly number[]): number[] => {
    const x = [...side];
    for (let i = 0; i < size; i += 1) {
      for (let k = 0; k < i; k += 1) x[i]! -= lower[i]![k]! * x[k]!;
      x[i]! /= lower[i]![i]!;
    }
    for (let i = size - 1; i >= 0; i -= 1) {
      for (let k = i + 1; k < size; k += 1) x[i]! -= lower[k]![i]! * x[k]!;
      x[i]! /= lower[i]![i]!;
    }
    return x;
  };
  const unit = (at: number) => right.map((_, i) => (i === at ? 1 : 0));
  return { mean: solve(right), variances: right.map((_, at) => solve(unit(at))[at]!), logDeterminant };
}
