/**
 * Solves `matrix * x = right` by elimination without exchanging rows: for balances of conductances, whose
 * diagonal outweighs each row. Both are overwritten; `right` becomes x.
 *
 * @param matrix n by n, row by row
 */
export function solveBalance(matrix: Float64Array, right: Float64Array): void {
  const n = right.length;
  for (let k = 0; k < n; k++) {
    for (let row = k + 1; row < n; row++) {
      const share = matrix[row * n + k] / matrix[k * n + k];
      if (share === 0) continue;
      for (let column = k + 1; column < n; column++)
        matrix[row * n + column] -= share * matrix[k * n + column];
      right[row] -= share * right[k];
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let value = right[k];
    for (let column = k + 1; column < n; column++) value -= matrix[k * n + column] * right[column];
    right[k] = value / matrix[k * n + k];
  }
}
