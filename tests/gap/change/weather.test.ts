import { expect, test } from 'vitest';
import { judgeNights } from '../../../src/cooling/index.ts';
import { type StageWeather, weatherApart, weatherOf } from '../../../src/gap/change/weather.ts';
import { HOUR, midnight, nightsOf, recordOf } from '../../cooling/nightsAtHand.ts';

const dayOf = (t: number) => Math.floor((t - midnight) / (24 * HOUR));
const record = recordOf({ days: 6, outside: () => 4, irradiance: (t) => (dayOf(t) < 3 ? 100 : 300) });
/** An outdoor logger that stands still is doubted; here it may. */
const nights = judgeNights(record, nightsOf(record)).map((night) => ({ ...night, used: true }));

test('a stage’s weather is that of the windows of its nights, its sun that of the day before each', () => {
  const weather = weatherOf({ ...record, windSpeed: record.insideTemperature.map(() => 3) }, nights);
  expect(weather.nights).toBe(nights.filter(({ window }) => window !== null).length);
  expect(weather.nights).toBeGreaterThan(4);
  expect(weather.outsideTemperature).toBeCloseTo(4, 9);
  expect(weather.windSpeed).toBeCloseTo(3, 9);
  // Warmed to 20 °C and cooling with 40 h from 20:00 to 07:00 at the longest: 16·exp(−11/40) = 12.2 K is the least.
  expect(weather.difference).toBeGreaterThan(12.2);
  expect(weather.difference).toBeLessThan(16);
  const first = weatherOf(record, nights.slice(0, 2));
  expect(first.irradiance).toBeCloseTo(100, 9);
});

test('a night that was not used counts for nothing, and what nobody logged is not known', () => {
  const none = weatherOf(
    record,
    nights.map((night) => ({ ...night, used: false })),
  );
  expect(none).toEqual({
    nights: 0,
    outsideTemperature: null,
    difference: null,
    windSpeed: null,
    irradiance: null,
  });
  expect(weatherOf(record, nights).windSpeed).toBeNull();
});

test.each([
  ['differences of 9 and 14 K', { difference: [9, 14] }, { difference: [9, 14], windSpeed: null }],
  ['differences of 10 and 14 K', { difference: [10, 14] }, { difference: null, windSpeed: null }],
  ['wind of 5 and 2 m/s', { windSpeed: [5, 2] }, { difference: null, windSpeed: [5, 2] }],
  ['wind of 5 and 3 m/s', { windSpeed: [5, 3] }, { difference: null, windSpeed: null }],
  ['two calms', { windSpeed: [0.3, 1.2] }, { difference: null, windSpeed: null }],
  ['wind logged on one side', { windSpeed: [6, null] }, { difference: null, windSpeed: null }],
] as const)('%s are told apart or not', (_, given, expected) => {
  const side = (i: 0 | 1): StageWeather => ({
    nights: 9,
    outsideTemperature: 5,
    difference: 'difference' in given ? given.difference[i] : 12,
    windSpeed: 'windSpeed' in given ? given.windSpeed[i] : null,
    irradiance: null,
  });
  expect(weatherApart(side(0), side(1))).toEqual(expected);
});
