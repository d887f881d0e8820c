/**
 * Serial correlation: the NAG g02fc example (result READ, residuals MEMORY), and the R data set `lh` (data READ
 * in Rdatasets; the lag-1 autocorrelation 0.576 published, MEMORY; the rest COMPUTED).
 */
import { expect, test } from 'vitest';
import {
  autocorrelation,
  durbinWatson,
  lag1Autocorrelation,
  ljungBox,
} from '../../src/maths/autocorrelation.ts';

const lh = [
  2.4, 2.4, 2.4, 2.2, 2.1, 1.5, 2.3, 2.3, 2.5, 2.0, 1.9, 1.7, 2.2, 1.8, 3.2, 3.2, 2.7, 2.2, 2.2, 1.9, 1.9,
  1.8, 2.7, 3.0, 2.3, 2.0, 2.0, 2.9, 2.9, 2.7, 2.7, 2.3, 2.6, 2.4, 1.8, 1.7, 1.5, 1.4, 2.1, 3.3, 3.5, 3.5,
  3.1, 2.6, 2.1, 3.4, 3.0, 2.9,
];

test('Durbin and Watson: 0.9238 for the residuals of the NAG example', () => {
  const residuals = [
    3.735719, 0.912755, 0.683626, 0.416693, 1.9902, -0.444816, -1.283088, -3.666035, -0.426357, -1.918697,
  ];
  expect(Math.abs(durbinWatson(residuals) - 0.9238)).toBeLessThan(5e-5); // READ; half of the last digit
});

test('lh is correlated by 0.576 from one value to the next, and so on up to lag 5', () => {
  expect(Math.abs(lag1Autocorrelation(lh) - 0.576)).toBeLessThan(5e-4); // MEMORY; half of the last digit
  // COMPUTED; half of the last digit
  [0.575524, 0.181818, -0.144755, -0.174825, -0.14965].forEach((expected, i) => {
    expect(Math.abs(autocorrelation(lh, i + 1) - expected)).toBeLessThan(5e-7);
  });
});

test('Ljung and Box find that lh is not independent, by one lag or by five', () => {
  // COMPUTED; half of the last digit printed
  expect(Math.abs(ljungBox(lh, 1).q - 16.913792)).toBeLessThan(5e-7);
  expect(Math.abs(ljungBox(lh, 1).probability - 3.9116e-5)).toBeLessThan(5e-10);
  expect(Math.abs(ljungBox(lh, 5).q - 22.673185)).toBeLessThan(5e-7);
  expect(Math.abs(ljungBox(lh, 5).probability - 3.8974e-4)).toBeLessThan(5e-9);
});

test('each fitted parameter takes a degree of freedom off the Ljung and Box test', () => {
  // COMPUTED: scipy 1.17.1 chi2.sf(22.673185, 3); half of the last digit and that of the printed q
  expect(Math.abs(ljungBox(lh, 5, 2).probability - 4.72389e-5)).toBeLessThan(5e-10);
});
