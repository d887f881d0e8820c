/**
 * Least squares against certified and computed values.
 *
 * - NIST Statistical Reference Datasets (itl.nist.gov/div898/strd), READ as carried in the lmfit-py repository
 *   (nonlinear) and in the Apache Commons Math tests (linear).
 * - Moore and McCabe, example 10.3, READ in the Apache Commons Math tests, which checked it against R 1.8.1.
 * - A co-heating regression and robust errors, COMPUTED with numpy 2.4.6 from the formulas.
 */
import { describe, expect, test } from 'vitest';
import { linearLeastSquares } from '../../src/maths/leastSquares.ts';
import { levenbergMarquardt } from '../../src/maths/levenbergMarquardt.ts';
import { neweyWest } from '../../src/maths/neweyWest.ts';
import { halfWidth } from '../../src/maths/studentT.ts';

const relativeError = (value: number, expected: number) => Math.abs(value / expected - 1);

function line(x: readonly number[], y: readonly number[]) {
  const fit = linearLeastSquares(
    x.map((it) => [1, it]),
    y,
  );
  if (fit.kind === 'not fitted') throw new Error(fit.reason);
  return { ...fit, errors: fit.covariance.map((row, k) => Math.sqrt(row[k])) };
}

describe('a straight line', () => {
  // nine digits: what double precision leaves of the fifteen certified ones with room to spare
  const NINE_DIGITS = 1e-9;

  test('NIST Norris comes out to nine digits', () => {
    const x = [
      0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0,
      447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1,
      118.3, 229.2, 669.1, 448.9, 0.5,
    ];
    const y = [
      0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
      448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2,
      117.6, 228.9, 668.4, 449.2, 0.2,
    ];
    const { coefficients, errors, residualStandardDeviation, degreesOfFreedom } = line(x, y);
    expect(relativeError(coefficients[0], -0.262323073774029)).toBeLessThan(NINE_DIGITS); // READ
    expect(relativeError(coefficients[1], 1.00211681802045)).toBeLessThan(NINE_DIGITS); // READ
    expect(relativeError(errors[0], 0.232818234301152)).toBeLessThan(NINE_DIGITS); // READ
    expect(relativeError(errors[1], 0.429796848199937e-3)).toBeLessThan(NINE_DIGITS); // READ
    expect(relativeError(residualStandardDeviation, 0.884796396144373)).toBeLessThan(NINE_DIGITS); // READ
    expect(degreesOfFreedom).toBe(34);
  });

  test('NIST NoInt1, through the origin, comes out to nine digits', () => {
    const x = [60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70];
    const fit = linearLeastSquares(
      x.map((it) => [it]),
      x.map((it) => it + 70),
    );
    if (fit.kind === 'not fitted') throw new Error(fit.reason);
    expect(relativeError(fit.coefficients[0], 2.07438016528926)).toBeLessThan(NINE_DIGITS); // READ
    expect(relativeError(Math.sqrt(fit.covariance[0][0]), 0.165289256198347e-1)).toBeLessThan(NINE_DIGITS); // READ
    expect(relativeError(fit.residualStandardDeviation ** 2, 12.7272727272727)).toBeLessThan(NINE_DIGITS); // READ
  });

  test('Moore and McCabe, example 10.3: standard errors and the 95 % half-width of the slope', () => {
    const x = [15.6, 26.8, 37.8, 36.4, 35.5, 18.6, 15.3, 7.9, 0];
    const y = [5.2, 6.1, 8.7, 8.5, 8.8, 4.9, 4.5, 2.5, 1.1];
    const { coefficients, errors, degreesOfFreedom } = line(x, y);
    // half of the last digit printed
    expect(Math.abs(coefficients[1] - 0.2022115137)).toBeLessThan(5e-11); // COMPUTED
    expect(Math.abs(coefficients[0] - 1.2323541661)).toBeLessThan(5e-11); // COMPUTED
    expect(Math.abs(errors[1] - 0.011448491)).toBeLessThan(5e-10); // READ
    expect(Math.abs(errors[0] - 0.286036932)).toBeLessThan(5e-10); // READ
    // 1e-8 relative: the t-quantile is found to that
    expect(relativeError(halfWidth(errors[1], degreesOfFreedom), 0.0270713794287)).toBeLessThan(1e-8); // READ
  });
});

describe('ten days of co-heating', () => {
  const difference = [17.2, 18.9, 20.4, 16.1, 19.5, 21.3, 14.8, 15.9, 22.0, 18.0]; // [K]
  const sun = [62, 35, 20, 95, 48, 15, 120, 80, 12, 55]; // [W/m²]
  const heat = [2203, 2523, 2821, 1862, 2579, 2953, 1615, 1916, 3063, 2330]; // [W]
  const rows = difference.map((it, i) => [it, -sun[i]]);

  test('heat against difference and sun gives the loss and the solar aperture with their errors', () => {
    const fit = linearLeastSquares(rows, heat);
    if (fit.kind === 'not fitted') throw new Error(fit.reason);
    // half of the last digit; all COMPUTED
    expect(Math.abs(fit.coefficients[0] - 141.8169)).toBeLessThan(5e-5);
    expect(Math.abs(fit.coefficients[1] - 4.1396)).toBeLessThan(5e-5);
    expect(Math.abs(Math.sqrt(fit.covariance[0][0]) - 0.4228)).toBeLessThan(5e-5);
    expect(Math.abs(Math.sqrt(fit.covariance[1][1]) - 0.1225)).toBeLessThan(5e-5);
    expect(Math.abs(fit.residualStandardDeviation - 15.6324)).toBeLessThan(5e-5);
  });

  test("Siviour's form, both sides divided by the difference, gives nearly the same", () => {
    const { coefficients, errors } = line(
      sun.map((it, i) => it / difference[i]),
      heat.map((it, i) => it / difference[i]),
    );
    // half of the last digit; all COMPUTED
    expect(Math.abs(coefficients[0] - 141.8228)).toBeLessThan(5e-5);
    expect(Math.abs(coefficients[1] - -4.1411)).toBeLessThan(5e-5);
    expect(Math.abs(errors[0] - 0.4936)).toBeLessThan(5e-5);
    expect(Math.abs(errors[1] - 0.1236)).toBeLessThan(5e-5);
  });

  test.each([
    // COMPUTED: numpy, X'KX with the whole Bartlett matrix K, times n/(n − p)
    { lag: 0, errors: [0.3072072, 0.13239335], covariance: 0.02955441 },
    { lag: 2, errors: [0.31292375, 0.13705188], covariance: 0.03861812 },
    { lag: 3, errors: [0.29473277, 0.11736599], covariance: 0.03231677 },
  ])(
    'errors robust to correlation up to lag $lag agree with the matrix formula',
    ({ lag, errors, covariance }) => {
      const fit = linearLeastSquares(rows, heat);
      if (fit.kind === 'not fitted') throw new Error(fit.reason);
      const robust = neweyWest(rows, fit, lag);
      // half of the last digit printed by numpy
      expect(Math.abs(Math.sqrt(robust[0][0]) - errors[0])).toBeLessThan(5e-8);
      expect(Math.abs(Math.sqrt(robust[1][1]) - errors[1])).toBeLessThan(5e-9);
      expect(Math.abs(robust[0][1] - covariance)).toBeLessThan(5e-9);
      expect(robust[1][0]).toBeCloseTo(robust[0][1], 12); // symmetric to rounding
    },
  );

  test('a weighted line with one day left out agrees with the normal equations', () => {
    const fit = linearLeastSquares(
      difference.map((it) => [1, it]),
      heat,
      [1, 2, 1, 0.5, 1, 3, 1, 1, 0, 2],
    );
    if (fit.kind === 'not fitted') throw new Error(fit.reason);
    // half of the last digit printed by numpy; all COMPUTED
    expect(Math.abs(fit.coefficients[0] - -1297.50290213)).toBeLessThan(5e-9);
    expect(Math.abs(fit.coefficients[1] - 200.59424653)).toBeLessThan(5e-9);
    expect(Math.abs(Math.sqrt(fit.covariance[0][0]) - 116.54824034)).toBeLessThan(5e-9);
    expect(Math.abs(Math.sqrt(fit.covariance[1][1]) - 6.19993935)).toBeLessThan(5e-9);
    expect(fit.degreesOfFreedom).toBe(7);
  });
});

interface CertifiedSet {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly model: (b: Float64Array, x: number) => number;
  readonly starts: readonly (readonly number[])[];
  readonly certified: readonly number[];
  readonly deviations: readonly number[];
  readonly residualDeviation: number;
}

const misra = {
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
};

// all READ
const certifiedSets: readonly CertifiedSet[] = [
  {
    name: 'Misra1a',
    ...misra,
    model: (b, x) => b[0] * (1 - Math.exp(-b[1] * x)),
    starts: [
      [500, 0.0001],
      [250, 0.0005],
    ],
    certified: [2.3894212918e2, 5.5015643181e-4],
    deviations: [2.7070075241, 7.2668688436e-6],
    residualDeviation: 1.018787633e-1,
  },
  {
    name: 'Misra1b',
    ...misra,
    model: (b, x) => b[0] * (1 - (1 + (b[1] * x) / 2) ** -2),
    starts: [
      [500, 0.0001],
      [300, 0.0002],
    ],
    certified: [3.3799746163e2, 3.9039091287e-4],
    deviations: [3.1643950207, 4.2547321834e-6],
    residualDeviation: 7.9301471998e-2,
  },
  {
    name: 'MGH17',
    x: Array.from({ length: 33 }, (_, i) => 10 * i),
    y: [
      0.844, 0.908, 0.932, 0.936, 0.925, 0.908, 0.881, 0.85, 0.818, 0.784, 0.751, 0.718, 0.685, 0.658, 0.628,
      0.603, 0.58, 0.558, 0.538, 0.522, 0.506, 0.49, 0.478, 0.467, 0.457, 0.448, 0.438, 0.431, 0.424, 0.42,
      0.414, 0.411, 0.406,
    ],
    model: (b, x) => b[0] + b[1] * Math.exp(-x * b[3]) + b[2] * Math.exp(-x * b[4]),
    starts: [
      [50, 150, -100, 1, 2],
      [0.5, 1.5, -1, 0.01, 0.02],
    ],
    certified: [3.7541005211e-1, 1.9358469127, -1.4646871366, 1.286753464e-2, 2.2122699662e-2],
    deviations: [2.0723153551e-3, 2.2031669222e-1, 2.2175707739e-1, 4.4861358114e-4, 8.9471996575e-4],
    residualDeviation: 1.3970497866e-3,
  },
  {
    name: 'DanWood',
    x: [1.309, 1.471, 1.49, 1.565, 1.611, 1.68],
    y: [2.138, 3.421, 3.597, 4.34, 4.882, 5.66],
    model: (b, x) => b[0] * x ** b[1],
    starts: [
      [1, 5],
      [0.7, 4],
    ],
    certified: [7.6886226176e-1, 3.8604055871],
    deviations: [1.828197386e-2, 5.1726610913e-2],
    residualDeviation: 3.2853114039e-2,
  },
];

describe.each(certifiedSets)(
  'NIST $name',
  ({ x, y, model, starts, certified, deviations, residualDeviation }) => {
    test.each(starts.map((start) => ({ start })))('is found from $start', ({ start }) => {
      const fit = levenbergMarquardt({
        count: x.length,
        start,
        residuals: (parameters, out) => {
          x.forEach((it, i) => {
            out[i] = y[i] - model(parameters, it);
          });
        },
      });
      if (fit.kind === 'not fitted') throw new Error(fit.reason);
      // six digits of the parameters and five of the deviations, as is usual with these sets
      certified.forEach((it, k) => {
        expect(relativeError(fit.parameters[k], it)).toBeLessThan(1e-6);
        expect(relativeError(Math.sqrt(fit.covariance[k][k]), deviations[k])).toBeLessThan(1e-5);
      });
      expect(relativeError(fit.residualStandardDeviation, residualDeviation)).toBeLessThan(1e-5);
      expect(fit.degreesOfFreedom).toBe(x.length - certified.length);
    });
  },
);
