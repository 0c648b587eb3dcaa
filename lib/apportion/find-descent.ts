/** A pivot below this share of its full curvature is none: rounding leaves about 1e-11 of repeated measurements. */
const SMALL_PIVOT_RATIO = 1e-10;
/** A slope that is this small beside the terms it is the sum of is none. */
const SMALL_SLOPE_RATIO = 1e-9;

/**
 * A direction down a convex function of a few variables, from its gradient and its matrix of second derivatives (lower
 * triangle, overwritten by its Cholesky factor). Newton's step where the matrix is regular. Where the function is
 * straight along some direction and falls, that direction, at a safe first length; where it is straight and level,
 * Newton's step in what remains. `fullCurvatures` are the largest second derivatives the function has anywhere. Nothing
 * is allocated. Source: own-method.
 */
export function findDescent(
  matrix: Float64Array,
  gradient: Float64Array,
  fullCurvatures: Float64Array,
  level: number,
  step: Float64Array,
): void {
  const count = gradient.length;
  for (let k = 0; k < count; k += 1) {
    for (let j = 0; j < k; j += 1) {
      let sum = matrix[k * count + j]!;
      for (let i = 0; i < j; i += 1) sum -= matrix[k * count + i]! * matrix[j * count + i]!;
      const pivot = matrix[j * count + j]!;
      matrix[k * count + j] = pivot > 0 ? sum / pivot : 0;
    }
    let curvature = matrix[k * count + k]!;
    for (let i = 0; i < k; i += 1) curvature -= matrix[k * count + i]! * matrix[k * count + i]!;
    const full = fullCurvatures[k]!;
    if (curvature > SMALL_PIVOT_RATIO * full) {
      matrix[k * count + k] = Math.sqrt(curvature);
      continue;
    }
    if (fillStraightDirection(matrix, count, k, gradient, level, full > 0 ? full : 1, step)) return;
    matrix[k * count + k] = 0;
  }
  for (let k = 0; k < count; k += 1) {
    let sum = -gradient[k]!;
    for (let j = 0; j < k; j += 1) sum -= matrix[k * count + j]! * step[j]!;
    const pivot = matrix[k * count + k]!;
    step[k] = pivot > 0 ? sum / pivot : 0;
  }
  for (let k = count - 1; k >= 0; k -= 1) {
    let sum = step[k]!;
    for (let j = k + 1; j < count; j += 1) sum -= matrix[j * count + k]! * step[j]!;
    const pivot = matrix[k * count + k]!;
    step[k] = pivot > 0 ? sum / pivot : 0;
  }
}

/** The direction in the first k + 1 variables without curvature. False where the function is level along it. */
function fillStraightDirection(
  matrix: Float64Array,
  count: number,
  k: number,
  gradient: Float64Array,
  level: number,
  full: number,
  step: Float64Array,
): boolean {
  step.fill(0);
  step[k] = 1;
  let slope = gradient[k]!;
  let terms = Math.abs(slope);
  for (let j = k - 1; j >= 0; j -= 1) {
    const pivot = matrix[j * count + j]!;
    if (!(pivot > 0)) continue;
    let sum = 0;
    for (let i = j + 1; i <= k; i += 1) sum -= matrix[i * count + j]! * step[i]!;
    step[j] = sum / pivot;
    slope += gradient[j]! * step[j]!;
    terms += Math.abs(gradient[j]! * step[j]!);
  }
  if (Math.abs(slope) <= level + SMALL_SLOPE_RATIO * terms) return false;
  for (let j = 0; j <= k; j += 1) step[j]! *= -slope / full;
  return true;
}
