/**
 * Solves A x = b in place by elimination with row exchange; false when A is singular to working precision.
 * For the few unknowns of a house (about 20), where a library's matrix objects cost more than the work.
 */
export function solveLinearSystem(rows: Float64Array[], right: Float64Array): boolean {
  const size = right.length;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) {
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    }
    const pivotRow = rows[pivot]!;
    if (!(Math.abs(pivotRow[column]!) > 1e-14)) return false;
    const pivotRight = right[pivot]!;
    rows[pivot] = rows[column]!;
    rows[column] = pivotRow;
    right[pivot] = right[column]!;
    right[column] = pivotRight;
    for (let row = column + 1; row < size; row++) {
      const target = rows[row]!;
      const share = target[column]! / pivotRow[column]!;
      if (share === 0) continue;
      for (let k = column; k < size; k++) target[k]! -= share * pivotRow[k]!;
      right[row]! -= share * pivotRight;
    }
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = right[row]!;
    for (let k = row + 1; k < size; k++) sum -= rows[row]![k]! * right[k]!;
    right[row] = sum / rows[row]![row]!;
  }
  return true;
}
