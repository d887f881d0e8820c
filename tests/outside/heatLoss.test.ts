/** Heat loss against worked figures. */
import { describe, expect, test } from 'vitest';
import { capacityOverTau, coHeatingRegression, twoSlopes } from '../../src/heatloss/index.ts';

const perHour = (kelvinsPerHour: number) => kelvinsPerHour / 3600;

describe('two slopes of a heated night, one node', () => {
  // COMPUTED, exact: C·a = P − H·D in both phases. Tolerance: rounding only.
  test('4500 W then nothing: 150 W/K and 20 MJ/K', () => {
    const answer = twoSlopes(
      { power: 4500, difference: 14, slope: perHour(0.432) },
      { power: 0, difference: 16, slope: perHour(-0.432) },
    );
    expect(answer.heatLossCoefficient).toBeCloseTo(150, 9);
    expect(answer.heatCapacity / 1e6).toBeCloseTo(20, 9);
  });

  test('3000 W then 60 W of gains: 120 W/K and 12 MJ/K', () => {
    const answer = twoSlopes(
      { power: 3000, difference: 12, slope: perHour(0.468) },
      { power: 60, difference: 14.5, slope: perHour(-0.504) },
    );
    expect(answer.heatLossCoefficient).toBeCloseTo(120, 9);
    expect(answer.heatCapacity / 1e6).toBeCloseTo(12, 9);
  });
});

describe('co-heating regression over ten daily means', () => {
  // COMPUTED for the published form Q = H·dT − R·S without intercept; printed to 4 decimals.
  const difference = [17.2, 18.9, 20.4, 16.1, 19.5, 21.3, 14.8, 15.9, 22.0, 18.0];
  const irradiance = [62, 35, 20, 95, 48, 15, 120, 80, 12, 55];
  const heat = [2203, 2523, 2821, 1862, 2579, 2953, 1615, 1916, 3063, 2330];
  const days = heat.map((q, i) => ({ heat: q, difference: difference[i], irradiance: irradiance[i] }));
  const fit = coHeatingRegression(days);
  if (fit.kind !== 'fitted') throw new Error('the regression was not fitted');

  test('the heat loss is 141.8169 W/K, standard error 0.4228', () => {
    expect(fit.coefficients[0]).toBeCloseTo(141.8169, 4);
    expect(Math.sqrt(fit.covariance[0][0])).toBeCloseTo(0.4228, 4);
  });

  test('the solar aperture is 4.1396 m², standard error 0.1225', () => {
    expect(fit.coefficients[1]).toBeCloseTo(4.1396, 4);
    expect(Math.sqrt(fit.covariance[1][1])).toBeCloseTo(0.1225, 4);
  });

  test('the residuals scatter by 15.6324 W on 8 degrees of freedom', () => {
    expect(fit.residualStandardDeviation).toBeCloseTo(15.6324, 4);
    expect(fit.degreesOfFreedom).toBe(8);
  });
});

test.each([
  // COMPUTED from ISO 13790 12.2.1.3 (MEMORY), tau = Cm/H, printed to 2 decimals of an hour.
  { capacity: 16.5e6, hours: 30.56, heatLoss: 150 },
  { capacity: 8.8e6, hours: 24.44, heatLoss: 100 },
])('$capacity J/K that cool with $hours h lose $heatLoss W/K', ({ capacity, hours, heatLoss }) => {
  const estimate = capacityOverTau({
    heatCapacity: capacity,
    heatCapacitySd: 0.15,
    timeConstant: hours * 3600,
    logSe: 0.02,
    degreesOfFreedom: 6,
    constantGains: 0,
    meanDifference: 12,
    differenceSd: 0,
    neighbourShare: 0,
  });
  // 0.005 h in 24 h is 2e-4 of 150 W/K.
  expect(Math.abs(estimate.heatLossCoefficient.value - heatLoss)).toBeLessThan(0.03);
});
