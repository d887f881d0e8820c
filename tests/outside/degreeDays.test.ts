/**
 * Degree days against the published method. READ second-hand: the conditions and the standard year. COMPUTED:
 * by those conditions.
 */
import { sum } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import {
  baseTemperatureOf,
  degreeDaysOfExtremes,
  heatDemand,
  standardYear,
} from '../../src/fabric/degreeDays.ts';

const base = 15.5;

describe('a day of degree days, base 15.5 °C', () => {
  test.each([
    // COMPUTED: highest, lowest, degree days
    [8, 2, 10.5],
    [18.5, 8.5, 2.75],
    [20.5, 13.5, 0.5],
    [12, -3, 11],
    [25, 16, 0],
  ])('of at most %d °C and at least %d °C has %d', (highest, lowest, expected) => {
    expect(degreeDaysOfExtremes([{ lowest, highest }], base).degreeDays).toBeCloseTo(expected, 12);
  });
});

test('a week of them adds up to 34.75', () => {
  // COMPUTED
  const week = [
    [8, 2],
    [9.5, 3.5],
    [12, 6],
    [16.5, 8.5],
    [19.5, 13.5],
    [21, 16],
    [14, 7],
  ].map(([highest, lowest]) => ({ lowest, highest }));
  expect(degreeDaysOfExtremes(week, base)).toEqual({ degreeDays: 34.75, baseTemperature: 15.5 });
});

test('the standard year has 2463 degree days, the sum of its months', () => {
  expect(sum([...standardYear.months])).toBe(2463); // READ second-hand
  expect(standardYear).toMatchObject({ degreeDays: 2463, baseTemperature: 15.5 });
});

test('a loss of 150 W/K over the standard year is 8867 kWh', () => {
  // COMPUTED: 150·24·2463/1000 = 8866.8
  expect(heatDemand(150, standardYear) / 3.6e6).toBeCloseTo(8866.8, 9);
});

test('gains of 450 W at 150 W/K lower the base by 3 K', () => {
  expect(baseTemperatureOf(18.5, 450, 150)).toBeCloseTo(15.5, 12); // COMPUTED: 18.5 - 450/150
});
