/** How sure the coefficients are when the residuals are serially correlated and differ in spread. */
import type { LinearFit } from './leastSquares.ts';
import { dot, type Matrix, matrixOf } from './matrix.ts';

/**
 * Covariance of the coefficients of an unweighted linear fit, robust to heteroskedasticity and to
 * autocorrelation up to a lag: weights falling linearly with the lag (Bartlett), and n/(n − p) for the
 * coefficients used up. Lag 0 is robust to heteroskedasticity alone.
 *
 * Newey and West, Econometrica 55 (1987) 703, doi:10.2307/1913610.
 *
 * @param rows the n rows of the fit, in the order of time and evenly spaced
 * @param fit  what `linearLeastSquares` made of them without weights
 * @param lag  the longest lag counted, 0 to n − 1
 * @throws RangeError when the rows are not those of the fit or the lag is not such a whole number
 */
export function neweyWest(
  rows: readonly ArrayLike<number>[],
  fit: Extract<LinearFit, { kind: 'fitted' }>,
  lag: number,
): Matrix {
  const { residuals, inverse, degreesOfFreedom } = fit;
  const count = residuals.length;
  const size = inverse.length;
  if (rows.length !== count || rows.some((it) => it.length !== size))
    throw new RangeError('the rows are not those of the fit');
  if (!Number.isInteger(lag) || lag < 0 || lag >= count)
    throw new RangeError(`lag ${lag} is not within 0 to n − 1`);

  const scores = inverse.map((_, k) => residuals.map((it, i) => it * rows[i][k]));
  const middle = matrixOf(size, (i, j) => {
    let sum = dot(scores[i], scores[j]);
    for (let apart = 1; apart <= lag; apart++)
      sum +=
        (1 - apart / (lag + 1)) *
        (dot(scores[i].subarray(apart), scores[j]) + dot(scores[j].subarray(apart), scores[i]));
    return sum;
  });
  const smallSample = count / degreesOfFreedom;
  return matrixOf(size, (i, j) => {
    const weighed = middle.map((row) => dot(row, inverse[j]));
    return smallSample * dot(inverse[i], weighed);
  });
}
