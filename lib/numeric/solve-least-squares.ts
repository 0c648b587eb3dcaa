/**
 * The x that brings A·x nearest to b, and the diagonal of (AᵀA)⁻¹. A by columns. Householder reflections, which lose half
 * as many digits as the normal equations; a column without a part of its own gets 0 and an infinite diagonal.
 * Unguarded. Source: derived (standard numerical method).
 */
export function solveLeastSquares(
  columns: readonly (readonly number[])[],
  right: readonly number[],
): { solution: number[]; inverseDiagonal: number[] } {
  const count = columns.length;
  const work = columns.map((column) => [...column]);
  const target = [...right];
  const pivots: number[] = [];
  for (let k = 0; k < count; k += 1) {
    const column = work[k]!;
    const length = Math.hypot(...column.slice(k));
    const pivot = column[k]! > 0 ? -length : length;
    pivots.push(pivot);
    if (!(length > 0)) continue;
    const reflector = column.slice(k);
    reflector[0]! -= pivot;
    const square = reflector.reduce((sum, each) => sum + each * each, 0);
    for (const each of [...work.slice(k + 1), target]) {
      const share = (2 * reflector.reduce((sum, value, i) => sum + value * each[k + i]!, 0)) / square;
      reflector.forEach((value, i) => {
        each[k + i]! -= share * value;
      });
    }
  }
  // R is upper triangular: R_jk is work[k][j] for j < k, and the pivots on its diagonal.
  const isTold = (k: number) => Math.abs(pivots[k]!) > 1e-14 * Math.hypot(...columns[k]!);
  const solveUpper = (values: readonly number[]): number[] => {
    const solution = new Array<number>(count).fill(0);
    for (let k = count - 1; k >= 0; k -= 1) {
      let sum = values[k]!;
      for (let j = k + 1; j < count; j += 1) sum -= work[j]![k]! * solution[j]!;
      solution[k] = isTold(k) ? sum / pivots[k]! : 0;
    }
    return solution;
  };
  const inverse = pivots.map((_, k) => solveUpper(pivots.map((__, j) => (j === k ? 1 : 0))));
  return {
    solution: solveUpper(target),
    inverseDiagonal: pivots.map((_, k) =>
      pivots.every((__, j) => isTold(j))
        ? inverse.reduce((sum, each) => sum + each[k]! ** 2, 0)
        : Number.POSITIVE_INFINITY,
    ),
  };
}
