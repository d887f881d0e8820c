import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { excessOver, moistSeries, type Readings } from '../../src/air/index.ts';

const HOUR = 3600;
const readings = (time: readonly number[], value: readonly number[]): Readings => ({
  time: Float64Array.from(time),
  value: Float64Array.from(value),
});

test('air of 20 °C and half full holds about 8.6 g/m³ and grows wet at about 9.3 °C', () => {
  const air = moistSeries(readings([0], [20]), readings([0], [0.5]), HOUR);
  // MEMORY: psychrometric tables, 17.3 g/m³ at saturation of 20 °C and a dew point of 9.3 °C; to a tenth of their last digit.
  expect(air.absoluteHumidity[0] * 1000).toBeCloseTo(8.65, 1);
  expect(air.dewPoint[0]).toBeCloseTo(9.3, 1);
});

test('humidity between two temperatures takes the one on the line between them, and none across a gap', () => {
  const warmth = readings([0, HOUR, 5 * HOUR], [10, 20, 30]);
  const air = moistSeries(
    warmth,
    readings([-60, 0, HOUR / 2, 2 * HOUR, 6 * HOUR], [0.5, 0.5, 0.5, 0.5, 0.5]),
    HOUR,
  );
  expect([...air.time]).toEqual([0, HOUR / 2]);
  expect([...air.temperature]).toEqual([10, 15]);
});

test('air without any vapour has no dew point', () => {
  const air = moistSeries(readings([0], [20]), readings([0], [0]), HOUR);
  expect([air.absoluteHumidity[0], air.dewPoint[0]]).toEqual([0, Number.NaN]);
});

describe('vapour over outdoors', () => {
  const air = (time: readonly number[], temperature: number, humidity: number) =>
    moistSeries(
      readings(
        time,
        time.map(() => temperature),
      ),
      readings(
        time,
        time.map(() => humidity),
      ),
      HOUR,
    );

  test('is nothing where the same air is on both sides, however it is warmed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        (t, phi) => {
          const same = air([0, 600], t, phi);
          for (const it of excessOver(same, same, HOUR)) expect(it).toBeCloseTo(0, 12);
        },
      ),
    );
  });

  test('is the difference of both, and not known where nothing was logged outside', () => {
    const [inside, outside] = [air([0, 600, 9 * HOUR], 20, 0.5), air([0, 1200], 0, 0.8)];
    const over = excessOver(inside, outside, HOUR);
    expect(over[0]).toBeCloseTo(inside.absoluteHumidity[0] - outside.absoluteHumidity[0], 12);
    expect(over[1]).toBeCloseTo(over[0], 12);
    expect(over[2]).toBeNaN();
  });
});
