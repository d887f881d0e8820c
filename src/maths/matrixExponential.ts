/** The exponential of a small square matrix. */
import { type Matrix, matrixOf, product } from './matrix.ts';

/** The series is summed for a matrix scaled to at most this in its largest row sum, then squared back. */
const SMALL = 0.5;
/** What is left out of the series at that size is below 1e-21 of it: 0.5^17 / 17!. */
const TERMS = 16;

/**
 * exp(M) by scaling and squaring over Taylor's series.
 *
 * @see Moler and Van Loan, Nineteen dubious ways to compute the exponential of a matrix, twenty-five years later,
 *      SIAM Review 45 (2003) 3, method 3, doi:10.1137/S00361445024180
 */
export function matrixExponential(matrix: Matrix): number[][] {
  const size = matrix.length;
  const halvings = halvingsOf(matrix);
  const scaled = matrixOf(size, (i, j) => matrix[i][j] / 2 ** halvings);
  let term = matrixOf(size, (i, j) => (i === j ? 1 : 0));
  const sum = term.map((row) => row.slice());
  for (let k = 1; k <= TERMS; k++) {
    term = product(term, scaled).map((row) => row.map((it) => it / k));
    for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) sum[i][j] += term[i][j];
  }
  let power = sum;
  for (let k = 0; k < halvings; k++) power = product(power, power);
  return power;
}

/** How often a matrix must be halved before it is small. */
export function halvingsOf(matrix: Matrix): number {
  const largest = Math.max(...matrix.map((row) => row.reduce((sum, it) => sum + Math.abs(it), 0)));
  return largest > SMALL && Number.isFinite(largest) ? Math.ceil(Math.log2(largest / SMALL)) : 0;
}
