/**
 * Seven nights pooled by random effects. COMPUTED: statsmodels 0.15.0 `combine_effects`, and REML with scipy
 * 1.17.1 on the restricted likelihood.
 */
import { expect, test } from 'vitest';
import { poolRandomEffects } from '../../src/maths/pooling.ts';
import { tInterval } from '../../src/maths/studentT.ts';

const hours = [48.2, 55.1, 43.7, 61.3, 50.4, 46.9, 58.8];
const errors = [2.1, 3.4, 2.8, 4.9, 1.9, 2.6, 3.9];

const pooled = () => {
  const it = poolRandomEffects(
    hours.map(Math.log),
    hours.map((tau, i) => (errors[i] / tau) ** 2),
  );
  if (it.kind === 'not pooled') throw new Error(it.reason);
  return it;
};

// the closed forms are printed to nine digits; the search behind REML was run to 1e-5
const CLOSED = 1e-6;
const REML = 1e-5;

test('the fixed effect has the mean, error and heterogeneity of the closed forms', () => {
  const { mean, se, q, iSquared, degreesOfFreedom } = pooled().fixedEffect;
  expect(Math.abs(mean - 3.92302523)).toBeLessThan(CLOSED); // COMPUTED
  expect(Math.abs(se - 0.020220077)).toBeLessThan(CLOSED); // COMPUTED
  expect(Math.abs(q - 21.15724698)).toBeLessThan(CLOSED); // COMPUTED
  expect(Math.abs(iSquared - 0.716409)).toBeLessThan(CLOSED); // COMPUTED
  expect(degreesOfFreedom).toBe(6);
});

test('REML finds how much the nights differ, the mean and both errors', () => {
  const { betweenVariance, mean, remlSe, hartungKnappSe } = pooled();
  expect(Math.abs(betweenVariance / 0.009817683 - 1)).toBeLessThan(REML); // COMPUTED
  expect(Math.abs(mean - 3.938565508)).toBeLessThan(REML); // COMPUTED
  expect(Math.abs(remlSe / 0.043471657 - 1)).toBeLessThan(REML); // COMPUTED
  expect(Math.abs(hartungKnappSe / 0.045144752 - 1)).toBeLessThan(REML); // COMPUTED
});

test('in hours: 51.345, from 46.164 to 57.108 by the REML error and from 45.975 to 57.342 by the other', () => {
  const { mean, remlSe, hartungKnappSe, interval, degreesOfFreedom } = pooled();
  const reml = tInterval(mean, remlSe, degreesOfFreedom);
  const hartungKnapp = tInterval(mean, hartungKnappSe, degreesOfFreedom);
  // half of the last digit printed, and 1e-5 of the figure for REML
  const near = (value: number, expected: number) =>
    expect(Math.abs(Math.exp(value) - expected)).toBeLessThan(5e-4 + REML * expected);
  near(mean, 51.345); // COMPUTED
  near(reml.low, 46.164); // COMPUTED
  near(reml.high, 57.108); // COMPUTED
  near(hartungKnapp.low, 45.975); // COMPUTED
  near(hartungKnapp.high, 57.342); // COMPUTED
  expect(interval).toEqual(hartungKnapp);
});
