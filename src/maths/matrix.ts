/** Small dense matrices, as rows of numbers. */
export type Matrix = readonly (readonly number[])[];

/** The dot product of two vectors of the same length. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

/** A matrix of the given size whose entries follow from row and column. */
export function matrixOf(size: number, entry: (row: number, column: number) => number): number[][] {
  return Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_, j) => entry(i, j)));
}

/**
 * Solves a symmetric positive definite system by Cholesky's decomposition (Golub and Van Loan, Matrix
 * Computations, 4th ed., 4.2); null when the matrix is not positive definite.
 *
 * @param matrix size × size, of which the lower half is read
 * @param right  length size
 */
export function solvePositiveDefinite(matrix: Matrix, right: ArrayLike<number>): Float64Array | null {
  const size = right.length;
  const lower = matrix.map((row) => Float64Array.from(row));
  for (let j = 0; j < size; j++)
    for (let i = j; i < size; i++) {
      let sum = lower[i][j];
      for (let k = 0; k < j; k++) sum -= lower[i][k] * lower[j][k];
      if (i === j && !(sum > 0)) return null;
      lower[i][j] = i === j ? Math.sqrt(sum) : sum / lower[j][j];
    }
  const solution = Float64Array.from(right);
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) solution[i] -= lower[i][k] * solution[k];
    solution[i] /= lower[i][i];
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) solution[i] -= lower[k][i] * solution[k];
    solution[i] /= lower[i][i];
  }
  return solution;
}

/** The product of two square matrices of the same size. */
export function product(a: Matrix, b: Matrix): number[][] {
  return a.map((row) => {
    const sum = new Array<number>(row.length).fill(0);
    for (let k = 0; k < row.length; k++) {
      const factor = row[k];
      if (factor === 0) continue;
      for (let j = 0; j < sum.length; j++) sum[j] += factor * b[k][j];
    }
    return sum;
  });
}

/** Rows become columns. */
export function transposed(matrix: Matrix): number[][] {
  return matrixOf(matrix.length, (i, j) => matrix[j][i]);
}
