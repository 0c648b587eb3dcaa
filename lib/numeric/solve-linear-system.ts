/** A pivot this small against the largest entry means that the rows say the same. */
const SINGULAR_RATIO = 1e-12;

/**
 * The x with A x = b, by elimination with the largest pivot first; null where the rows of A do not tell x.
 * Source: derived. For a handful of unknowns.
 */
export function solveLinearSystem(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const rows = matrix.map((row, index) => [...row, right[index]!]);
  const size = rows.length;
  const largest = Math.max(...matrix.flat().map(Math.abs));
  for (let column = 0; column < size; column += 1) {
    let pivot = column;
    for (let row = column + 1; row < size; row += 1) {
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    }
    if (!(Math.abs(rows[pivot]![column]!) > SINGULAR_RATIO * largest)) return null;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    for (let row = column + 1; row < size; row += 1) {
      const factor = rows[row]![column]! / rows[column]![column]!;
      for (let each = column; each <= size; each += 1) rows[row]![each]! -= factor * rows[column]![each]!;
    }
  }
  const solution = Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row -= 1) {
    let sum = rows[row]![size]!;
    for (let column = row + 1; column < size; column += 1) sum -= rows[row]![column]! * solution[column]!;
    solution[row] = sum / rows[row]![row]!;
  }
  return solution;
}
