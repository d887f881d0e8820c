/** The daily heat balance against ten worked daily means. */
import { linearRegression } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { coHeatingRegression, heatOverDifference } from '../../src/heatloss/index.ts';
import { linearLeastSquares } from '../../src/maths/leastSquares.ts';
import { studentTQuantile } from '../../src/maths/studentT.ts';

// COMPUTED for the published forms (MEMORY): Q = H·dT − R·S without intercept, and Siviour's Q/dT = H − R·S/dT.
const difference = [17.2, 18.9, 20.4, 16.1, 19.5, 21.3, 14.8, 15.9, 22.0, 18.0]; // K
const irradiance = [62, 35, 20, 95, 48, 15, 120, 80, 12, 55]; // W/m²
const heat = [2203, 2523, 2821, 1862, 2579, 2953, 1615, 1916, 3063, 2330]; // W
const days = heat.map((q, i) => ({ heat: q, difference: difference[i], irradiance: irradiance[i] }));

describe('ten daily means of a co-heated house', () => {
  const fit = coHeatingRegression(days);
  if (fit.kind !== 'fitted') throw new Error('the regression was not fitted');
  const [heatLoss, aperture] = fit.coefficients;

  test('by Siviour’s form, as a check: 141.8228 W/K (0.4936), slope −4.1411 (0.1236)', () => {
    const x = days.map((day) => day.irradiance / day.difference);
    const y = days.map((day) => day.heat / day.difference);
    const siviour = linearLeastSquares(
      x.map((it) => [1, it]),
      y,
    );
    if (siviour.kind !== 'fitted') throw new Error('not fitted');
    // printed to 4 decimals
    expect(siviour.coefficients[0]).toBeCloseTo(141.8228, 4);
    expect(siviour.coefficients[1]).toBeCloseTo(-4.1411, 4);
    expect(Math.sqrt(siviour.covariance[0][0])).toBeCloseTo(0.4936, 4);
    expect(Math.sqrt(siviour.covariance[1][1])).toBeCloseTo(0.1236, 4);
    // a library's straight line through the same points
    const line = linearRegression(x.map((it, i) => [it, y[i]]));
    expect(line.b).toBeCloseTo(siviour.coefficients[0], 9);
  });

  test('both forms agree: the regression lies inside Siviour’s standard error', () => {
    expect(Math.abs(heatLoss - 141.8228)).toBeLessThan(0.4936);
    expect(Math.abs(aperture - 4.1411)).toBeLessThan(0.1236);
  });

  test('the 95 % half-width is that of t with 8 degrees of freedom: 2.306004 standard errors', () => {
    // READ: the t table (NIST/SEMATECH e-Handbook 1.3.6.7.2), printed to 6 decimals.
    expect(studentTQuantile(0.975, fit.degreesOfFreedom)).toBeCloseTo(2.306004, 6);
  });

  test('ignoring the sun the mean ratio of heat to difference is 128.47 W/K, a tenth too low', () => {
    const ratios = days.map((day) => heatOverDifference([{ ...day, sun: 0 }]));
    const mean = ratios.reduce((sum, it) => sum + it, 0) / ratios.length;
    expect(mean).toBeCloseTo(128.47, 2);
  });

  test('with the sun’s part put back, the ratio of the sums is the regression’s heat loss', () => {
    // COMPUTED: R = 4.1396 m² from the regression, printed to 4 decimals; what is left is the sum of its residuals.
    const withSun = days.map((day) => ({ ...day, sun: 4.1396 * day.irradiance }));
    expect(Math.abs(heatOverDifference(withSun) - 141.8169)).toBeLessThan(0.4228);
  });
});
