import { expect, test } from 'vitest';
import {
  durbinWatson,
  effectiveSamples,
  lag1Autocorrelation,
  ljungBox,
  varianceInflation,
} from '../../src/maths/autocorrelation.ts';

const alternating = Array.from({ length: 40 }, (_, i) => (i % 2 === 0 ? 1 : -1));

test('values that change sign every time are correlated by −(n − 1)/n', () => {
  expect(lag1Autocorrelation(alternating)).toBeCloseTo(-39 / 40, 12);
  expect(durbinWatson(alternating)).toBeCloseTo((4 * 39) / 40, 12);
});

test('a constant series has no autocorrelation to speak of', () => {
  expect(lag1Autocorrelation([2, 2, 2])).toBeNaN();
});

test('an autocorrelation of a half makes three values worth one', () => {
  expect(varianceInflation(0.5)).toBe(3); // (1 + 0.5)/(1 − 0.5)
  expect(effectiveSamples(30, 0.5)).toBe(10);
});

test('a negative autocorrelation does not add values, and the strongest leaves at least one', () => {
  expect(effectiveSamples(30, -0.5)).toBe(30);
  expect(effectiveSamples(30, 1)).toBe(1);
  expect(varianceInflation(1)).toBeLessThan(Number.POSITIVE_INFINITY);
});

test('as many lags as values, or no more than fitted parameters, are a mistake in the call', () => {
  expect(() => ljungBox([1, 2, 3], 3)).toThrow(RangeError);
  expect(() => ljungBox([1, 2, 3], 0)).toThrow(RangeError);
  expect(() => ljungBox(alternating, 2, 2)).toThrow(RangeError);
});
