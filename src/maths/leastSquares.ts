/** Linear least squares for small dense problems. */
import { dot, type Matrix, matrixOf } from './matrix.ts';

export type LinearFit =
  | {
      readonly kind: 'fitted';
      /** One for each column. */
      readonly coefficients: Float64Array;
      /** Of the coefficients: the residual variance times `inverse`. */
      readonly covariance: Matrix;
      /** (XᵀWX)⁻¹ */
      readonly inverse: Matrix;
      /** Observed less fitted, not weighted; length n. */
      readonly residuals: Float64Array;
      /** Weighted, when weights are given: that of an observation of weight 1. */
      readonly residualStandardDeviation: number;
      readonly degreesOfFreedom: number;
    }
  | { readonly kind: 'not fitted'; readonly reason: 'too few' | 'not finite' | 'rank deficient' };

/** What must be left of a column, as a share of it, once the columns before it are taken out. */
const LEAST_SHARE = 1e-9;

/**
 * Fits `observed` by a sum of the columns, each times its coefficient. There is no intercept unless one column
 * is all ones.
 *
 * By Gram and Schmidt's orthogonalisation, done twice over each column so that the columns are orthogonal to
 * working precision (Giraud, Langou, Rozložník and van den Eshof, Numer. Math. 101 (2005) 87,
 * doi:10.1007/s00211-005-0615-4).
 *
 * @param rows     n rows of p numbers, one row for each observation
 * @param observed length n
 * @param weights  length n, 1/variance up to a factor; zero leaves an observation out. All 1 when not given.
 * @returns 'too few' without at least one observation more than columns; 'not finite' when a number is
 *          missing; 'rank deficient' when a column is a combination of those before it
 * @throws RangeError when the lengths differ or a weight is negative
 */
export function linearLeastSquares(
  rows: readonly ArrayLike<number>[],
  observed: ArrayLike<number>,
  weights?: ArrayLike<number>,
): LinearFit {
  const size = rows.length === 0 ? 0 : rows[0].length;
  if (rows.length !== observed.length || rows.some((row) => row.length !== size))
    throw new RangeError('one row of the same length for each observation');
  if (weights !== undefined && (weights.length !== rows.length || Array.from(weights).some((it) => it < 0)))
    throw new RangeError('one weight, not negative, for each observation');

  const columns = Array.from({ length: size }, (_, k) => Float64Array.from(rows, (row) => row[k]));
  return leastSquaresOfColumns(columns, observed, weights);
}

/** The same where the columns are at hand: p of n numbers. */
export function leastSquaresOfColumns(
  columns: readonly Float64Array[],
  observed: ArrayLike<number>,
  weights?: ArrayLike<number>,
): LinearFit {
  const count = observed.length;
  const root = new Float64Array(count).fill(1);
  if (weights !== undefined) for (let i = 0; i < count; i++) root[i] = Math.sqrt(weights[i]);
  const degreesOfFreedom = root.filter((it) => it !== 0).length - columns.length;
  if (columns.length === 0 || degreesOfFreedom < 1) return { kind: 'not fitted', reason: 'too few' };

  const weighted = (values: ArrayLike<number>) => {
    const own = new Float64Array(count);
    for (let i = 0; i < count; i++) own[i] = root[i] === 0 ? 0 : root[i] * values[i];
    return own;
  };
  const basis = columns.map(weighted);
  const rest = weighted(observed);
  if (![...basis, rest].every((it) => it.every(Number.isFinite)))
    return { kind: 'not fitted', reason: 'not finite' };

  const upper = orthonormalise(basis);
  if (upper === null) return { kind: 'not fitted', reason: 'rank deficient' };
  const coefficients = solveUpper(upper, takeOut(basis, rest));
  const inverse = gramInverse(upper);
  const variance = dot(rest, rest) / degreesOfFreedom;
  return {
    kind: 'fitted',
    coefficients,
    covariance: inverse.map((row) => row.map((it) => it * variance)),
    inverse,
    residuals: residualsOf(columns, coefficients, observed),
    residualStandardDeviation: Math.sqrt(variance),
    degreesOfFreedom,
  };
}

function residualsOf(
  columns: readonly Float64Array[],
  coefficients: Float64Array,
  observed: ArrayLike<number>,
): Float64Array {
  const residuals = new Float64Array(observed.length);
  for (let i = 0; i < residuals.length; i++) {
    let fitted = 0;
    for (let k = 0; k < columns.length; k++) fitted += columns[k][i] * coefficients[k];
    residuals[i] = observed[i] - fitted;
  }
  return residuals;
}

/** Turns the columns, in place, into an orthonormal basis of what they span; gives R of X = QR by its columns. */
function orthonormalise(columns: readonly Float64Array[]): Float64Array[] | null {
  const upper: Float64Array[] = [];
  for (const [j, column] of columns.entries()) {
    const whole = Math.sqrt(dot(column, column));
    const shares = takeOut(columns.slice(0, j), column);
    const left = Math.sqrt(dot(column, column));
    if (!(left > LEAST_SHARE * whole)) return null;
    for (let i = 0; i < column.length; i++) column[i] /= left;
    upper.push(Float64Array.of(...shares, left));
  }
  return upper;
}

/** Takes out of a vector, in place, what lies along each vector of an orthonormal basis; gives the amounts. */
function takeOut(basis: readonly Float64Array[], vector: Float64Array): Float64Array {
  const amounts = new Float64Array(basis.length);
  for (let round = 0; round < 2; round++)
    for (const [k, direction] of basis.entries()) {
      const along = dot(direction, vector);
      amounts[k] += along;
      for (let i = 0; i < vector.length; i++) vector[i] -= along * direction[i];
    }
  return amounts;
}

/** Solves R·x = right by back substitution; R by its columns. */
function solveUpper(upper: readonly Float64Array[], right: ArrayLike<number>): Float64Array {
  const solution = Float64Array.from(right);
  for (let i = solution.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < solution.length; k++) solution[i] -= upper[k][i] * solution[k];
    solution[i] /= upper[i][i];
  }
  return solution;
}

/** (RᵀR)⁻¹ = R⁻¹·R⁻ᵀ */
function gramInverse(upper: readonly Float64Array[]): Matrix {
  const size = upper.length;
  const inverseColumns = upper.map((_, j) => solveUpper(upper, new Float64Array(size).fill(1, j, j + 1)));
  return matrixOf(size, (i, j) => inverseColumns.reduce((sum, it) => sum + it[i] * it[j], 0));
}
