import fc from 'fast-check';
import { expect, test } from 'vitest';
import { figures } from '../../src/words/index.ts';

test.each([
  [{ value: 129.3, low: 88.44, high: 189.2 }, '88 to 189 W/K (129)'],
  [{ value: 41.27, low: 38.9, high: 43.62 }, '38.9 to 43.6 W/K (41.3)'],
  [{ value: 8.214, low: 8.1, high: 8.33 }, '8.10 to 8.33 W/K (8.21)'],
])('a heat loss is told interval first, with the digits that the interval can bear', (estimate, text) => {
  expect(figures.heatLossBetween(estimate)).toBe(text);
});

test.each([
  [{ value: 107.1, low: 98.6, high: 116.4 }, '99 to 116 h (107)'],
  [{ value: 94.9, low: 88.6, high: 101.7 }, '89 to 102 h (95)'],
  [{ value: 89.7, low: 89.41, high: 89.98 }, '89.4 to 90.0 h (89.7)'],
  [{ value: 8.21, low: 8.1, high: 8.33 }, '8.10 to 8.33 h (8.21)'],
])('hours are as fine as their interval, so that they agree with the mark on the ruler', (estimate, text) => {
  expect(figures.hoursBetween(estimate)).toBe(text);
});

test('the three figures of an interval have the same decimals, also across a hundred', () => {
  expect(figures.heatLossBetween({ value: 99.94, low: 98.6, high: 101.3 })).toBe('99 to 101 W/K (100)');
});

test('an interval without width is written and does not fail', () => {
  expect(figures.hoursBetween({ value: 100, low: 100, high: 100 })).toBe('100 to 100 h (100)');
});

test('the hours of a single night are whole, and of a house that holds nothing to a tenth', () => {
  expect([figures.hours(107.4), figures.hours(6.04)]).toEqual(['107 h', '6.0 h']);
});

test('ratios have two decimals', () => {
  expect(figures.ratioBetween({ value: 1.154, low: 0.771, high: 1.71 })).toBe('0.77 to 1.71 (1.15)');
});

test('below zero stands a true minus, and zero has none', () => {
  expect(figures.temperature(-3.24)).toBe('\u22123.2 °C');
  expect(figures.temperature(-0.03)).toBe('0.0 °C');
  expect(figures.kelvins(-0.0)).toBe('0.0 K');
  expect(figures.rate(-0.004)).toBe('0.00 K/h');
  expect(figures.percent(-0.2)).toBe('\u221220 %');
  expect(figures.heatLossBetween({ value: 12, low: -4.4, high: 30 })).toBe('\u22124 to 30 W/K (12)');
});

test('no figure of any size has a hyphen for a minus or a zero below zero', () => {
  const writers = [
    figures.temperature,
    figures.kelvins,
    figures.rate,
    figures.heatLoss,
    figures.hours,
    figures.percent,
    figures.ratio,
    figures.power,
  ];
  fc.assert(
    fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), (value) => {
      for (const write of writers) {
        expect(write(value)).not.toContain('-');
        expect(write(value)).not.toMatch(/^\u2212[0.]+ /);
      }
    }),
  );
});

test('dates in sentences are days and months as one says them', () => {
  expect(figures.days(['2027-02-03', '2027-02-04', '2027-02-05'])).toBe(
    '3 February, 4 February and 5 February',
  );
  expect(figures.dayOfYear('2027-02-04')).toBe('4 February 2027');
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
