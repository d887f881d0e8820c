import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LinearFit, linearLeastSquares } from '../../src/maths/leastSquares.ts';

const fitted = (fit: LinearFit) => {
  if (fit.kind === 'not fitted') throw new Error(fit.reason);
  return fit;
};
const value = fc.double({ min: -100, max: 100, noNaN: true });

describe('a fit', () => {
  test('finds the line that the points lie on', () => {
    fc.assert(
      fc.property(value, value, (intercept, slope) => {
        const x = [0, 1, 2, 3.5, 7];
        const fit = fitted(
          linearLeastSquares(
            x.map((it) => [1, it]),
            x.map((it) => intercept + slope * it),
          ),
        );
        expect(fit.coefficients[0]).toBeCloseTo(intercept, 9); // rounding of sums of hundreds
        expect(fit.coefficients[1]).toBeCloseTo(slope, 9);
        expect(fit.residualStandardDeviation).toBeLessThan(1e-11);
      }),
    );
  });

  test('leaves residuals that have nothing in common with any column', () => {
    fc.assert(
      fc.property(fc.array(value, { minLength: 6, maxLength: 6 }), (observed) => {
        const rows = observed.map((_, i) => [1, i, i * i]);
        const { residuals } = fitted(linearLeastSquares(rows, observed));
        for (let k = 0; k < 3; k++)
          expect(Math.abs(residuals.reduce((sum, it, i) => sum + it * rows[i][k], 0))).toBeLessThan(1e-9);
      }),
    );
  });

  test('an observation of weight 2 moves the line as two observations do', () => {
    fc.assert(
      fc.property(fc.array(value, { minLength: 5, maxLength: 5 }), (observed) => {
        const rows = observed.map((_, i) => [1, i]);
        const heavy = fitted(linearLeastSquares(rows, observed, [1, 1, 2, 1, 1]));
        const doubled = fitted(linearLeastSquares([...rows, rows[2]], [...observed, observed[2]]));
        for (const k of [0, 1]) expect(heavy.coefficients[k]).toBeCloseTo(doubled.coefficients[k], 9);
        expect(heavy.degreesOfFreedom).toBe(3);
        expect(doubled.degreesOfFreedom).toBe(4);
      }),
    );
  });

  test('an observation of weight 0 may be missing', () => {
    const fit = fitted(linearLeastSquares([[1], [1], [1]], [4, Number.NaN, 6], [1, 0, 1]));
    expect(fit.coefficients[0]).toBe(5);
    expect(fit.degreesOfFreedom).toBe(1);
  });

  test('does not change with the unit of a column', () => {
    const x = [1, 2, 4, 8, 9];
    const y = [2, 3, 3, 7, 8];
    const inMetres = fitted(
      linearLeastSquares(
        x.map((it) => [1, it]),
        y,
      ),
    );
    const inNanometres = fitted(
      linearLeastSquares(
        x.map((it) => [1, it * 1e9]),
        y,
      ),
    );
    expect(inNanometres.coefficients[1] * 1e9).toBeCloseTo(inMetres.coefficients[1], 12);
  });
});

describe('there is no fit', () => {
  test('with as many coefficients as observations, since nothing is left to judge it by', () => {
    expect(
      linearLeastSquares(
        [
          [1, 0],
          [1, 1],
        ],
        [3, 4],
      ),
    ).toEqual({ kind: 'not fitted', reason: 'too few' });
    expect(linearLeastSquares([], [])).toEqual({ kind: 'not fitted', reason: 'too few' });
  });

  test('where one column is the sum of others', () => {
    const rows = [0, 1, 2, 5, 6].map((it) => [1, it, 1 + 3 * it]);
    expect(linearLeastSquares(rows, [1, 2, 3, 4, 4])).toEqual({
      kind: 'not fitted',
      reason: 'rank deficient',
    });
  });

  test('where a column is nothing but zeros', () => {
    const rows = [0, 1, 2, 5].map((it) => [it, 0]);
    expect(linearLeastSquares(rows, [1, 2, 3, 4])).toEqual({ kind: 'not fitted', reason: 'rank deficient' });
  });

  test('where a number is missing', () => {
    expect(linearLeastSquares([[1], [1], [1]], [1, Number.NaN, 2])).toEqual({
      kind: 'not fitted',
      reason: 'not finite',
    });
  });

  test('and rows that do not match the observations are a mistake in the call', () => {
    expect(() => linearLeastSquares([[1], [1]], [1])).toThrow(RangeError);
    expect(() => linearLeastSquares([[1], [1, 2]], [1, 2])).toThrow(RangeError);
    expect(() => linearLeastSquares([[1], [1]], [1, 2], [1, -1])).toThrow(RangeError);
  });
});
