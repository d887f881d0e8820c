import { expect, test } from 'vitest';
import { linearLeastSquares } from '../../src/maths/leastSquares.ts';
import { neweyWest } from '../../src/maths/neweyWest.ts';

const wave = Array.from({ length: 60 }, (_, i) => Math.sin(i / 4));
const rows = wave.map(() => [1]);

test('the mean of a slow wave is less sure than its scatter says', () => {
  const fit = linearLeastSquares(rows, wave);
  if (fit.kind === 'not fitted') throw new Error(fit.reason);
  expect(neweyWest(rows, fit, 6)[0][0]).toBeGreaterThan(2 * fit.covariance[0][0]);
});

test('for a mean, lag 0 gives back the ordinary variance', () => {
  const fit = linearLeastSquares(rows, wave);
  if (fit.kind === 'not fitted') throw new Error(fit.reason);
  // Σe²/n²·n/(n − 1) is s²/n
  expect(neweyWest(rows, fit, 0)[0][0]).toBeCloseTo(fit.covariance[0][0], 14);
});

test('rows of another fit, or a lag as long as the record, are a mistake in the call', () => {
  const fit = linearLeastSquares(rows, wave);
  if (fit.kind === 'not fitted') throw new Error(fit.reason);
  expect(() => neweyWest(rows.slice(1), fit, 1)).toThrow(RangeError);
  expect(() => neweyWest(rows, fit, 60)).toThrow(RangeError);
  expect(() => neweyWest(rows, fit, 1.5)).toThrow(RangeError);
});
