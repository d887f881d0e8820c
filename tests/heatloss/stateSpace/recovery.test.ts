/** Houses that are what the model says. */
import { describe, expect, test } from 'vitest';
import { chooseStates } from '../../../src/heatloss/stateSpace/chooseStates.ts';
import { fitStates } from '../../../src/heatloss/stateSpace/fitStates.ts';
import { profileOf } from '../../../src/heatloss/stateSpace/profileOf.ts';
import { whitenessOf } from '../../../src/heatloss/stateSpace/whiteness.ts';
import { drawn, scale, simulated } from './simulated.ts';

const STEP = 1800;
const DAYS = 7;
const RUNS = 30;

const houses = Array.from({ length: RUNS }, (_, seed) => {
  const truth = drawn(seed);
  const inputs = simulated(truth, seed, DAYS, STEP);
  const fit = fitStates(inputs, 2, scale);
  if (fit === null) throw new Error('not fitted');
  return { truth: truth[0], inputs, fit };
});

describe('of thirty houses of two states', () => {
  test('the profile holds the true heat loss about 19 times in 20', () => {
    const held = houses.filter(({ truth, inputs, fit }) => {
      const { best, below, above } = profileOf(inputs, fit);
      return truth > best - below && truth < best + above;
    });
    // Binomial, 95 % of 30: 28.5 with a standard deviation of 1.2; 24 or fewer come by chance once in 300.
    expect(held.length).toBeGreaterThanOrEqual(25);
  });

  test('the heat loss found is neither high nor low on average', () => {
    const errors = houses.map(({ truth, fit }) => fit.parameters[0] - truth);
    const mean = errors.reduce((sum, it) => sum + it, 0) / RUNS;
    const sd = Math.sqrt(errors.reduce((sum, it) => sum + (it - mean) ** 2, 0) / (RUNS - 1));
    // Three standard errors, beside a hundredth that shrinkage by priors may leave.
    expect(Math.abs(mean)).toBeLessThan(0.01 + (3 * sd) / Math.sqrt(RUNS));
  });

  test('what is left over is white in most', () => {
    const white = houses.filter(({ inputs, fit }) => whitenessOf(inputs, fit).white);
    // Two tests of 5 % each: at worst 27 with a deviation of 1.6; three of these to the low side.
    expect(white.length).toBeGreaterThanOrEqual(22);
  });
});

test('one state is not enough for most of twelve such houses, and a third is seldom called for', () => {
  const chosen = houses.slice(0, 12).map(({ inputs }) => chooseStates(inputs, scale).length);
  expect(chosen.filter((it) => it >= 2).length).toBeGreaterThanOrEqual(9);
  // A test of 5 %: four or more of twelve come by chance once in 400.
  expect(chosen.filter((it) => it === 3).length).toBeLessThanOrEqual(3);
});
