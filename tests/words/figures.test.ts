import { expect, test } from 'vitest';
import { figures } from '../../src/words/index.ts';

test.each([
  [{ value: 129.3, low: 88.44, high: 189.2 }, '88 to 189 W/K (129)'],
  [{ value: 41.27, low: 38.9, high: 43.62 }, '38.9 to 43.6 W/K (41.3)'],
  [{ value: 8.214, low: 8.1, high: 8.33 }, '8.10 to 8.33 W/K (8.21)'],
])('a heat loss is told interval first, with the digits that the interval can bear', (estimate, text) => {
  expect(figures.heatLossBetween(estimate)).toBe(text);
});

test('hours have two significant digits, ratios two decimals', () => {
  expect(figures.hoursBetween({ value: 94.6, low: 88.2, high: 104 })).toBe('88 to 100 h (95)');
  expect(figures.ratioBetween({ value: 1.154, low: 0.771, high: 1.71 })).toBe('0.77 to 1.71 (1.15)');
});

test.each([
  [0, '0 W/K'],
  [0.1234, '0.123 W/K'],
  [103.31, '103 W/K'],
  [1234.5, '1230 W/K'],
])('%f W/K is written %s', (value, text) => {
  expect(figures.heatLoss(value)).toBe(text);
});

test('a duration is told in minutes or in hours', () => {
  expect(figures.duration(3600)).toBe('60 min');
  expect(figures.duration(4 * 3600)).toBe('4.0 h');
});
