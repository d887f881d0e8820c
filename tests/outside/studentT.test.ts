/** Quantiles of Student's t: NIST/SEMATECH e-Handbook 1.3.6.7.2, MEMORY, confirmed with scipy 1.17.1. */
import { expect, test } from 'vitest';
import { halfWidth, studentTQuantile } from '../../src/maths/studentT.ts';

const table = [
  [1, 6.313752, 12.706205, 63.656741],
  [2, 2.919986, 4.302653, 9.924843],
  [4, 2.131847, 2.776445, 4.604095],
  [8, 1.859548, 2.306004, 3.355387],
  [10, 1.812461, 2.228139, 3.169273],
  [20, 1.724718, 2.085963, 2.84534],
  [30, 1.697261, 2.042272, 2.749996],
  [120, 1.657651, 1.97993, 2.617421],
  [Number.POSITIVE_INFINITY, 1.644854, 1.959964, 2.575829],
] as const;

test.each(table)(
  't with %d degrees of freedom has the quantiles of the table',
  (freedom, t95, t975, t995) => {
    // half of the last digit printed, and 1e-7 for the search behind it
    const tolerance = 0.5e-6 + 1e-7;
    expect(Math.abs(studentTQuantile(0.95, freedom) - t95)).toBeLessThan(tolerance);
    expect(Math.abs(studentTQuantile(0.975, freedom) - t975)).toBeLessThan(tolerance);
    expect(Math.abs(studentTQuantile(0.995, freedom) - t995)).toBeLessThan(tolerance);
  },
);

test('a 95 % interval reaches as far as the 97.5 % quantile, a 90 % interval as the 95 % quantile', () => {
  expect(Math.abs(halfWidth(1, 8) - 2.306004)).toBeLessThan(1e-6); // MEMORY, the same table
  expect(Math.abs(halfWidth(1, 8, 0.9) - 1.859548)).toBeLessThan(1e-6);
});
