import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { degreeDaysOfExtremes, degreeDaysOfSeries } from '../../src/fabric/degreeDays.ts';

const hour = 3600;

describe('degree days from hourly readings', () => {
  test('of a steady 5 °C are 10.5 a day at base 15.5 °C', () => {
    expect(degreeDaysOfSeries(new Float64Array(48).fill(5), hour, 15.5)).toEqual({
      degreeDays: 21,
      baseTemperature: 15.5,
      covered: 1,
    });
  });
  test('count the cold hours of a day whose mean is at the base', () => {
    // COMPUTED: twelve hours 6 K below the base are 12·6/24 = 3; the mean of the day would say 0.
    const day = Float64Array.from({ length: 24 }, (_, i) => (i < 12 ? 9.5 : 21.5));
    expect(degreeDaysOfSeries(day, hour, 15.5).degreeDays).toBeCloseTo(3, 12);
  });
  test('leave out what is missing, and say how much was there', () => {
    const day = new Float64Array(24).fill(5).fill(Number.NaN, 18);
    const { degreeDays, covered } = degreeDaysOfSeries(day, hour, 15.5);
    expect(covered).toBe(0.75);
    expect(degreeDays).toBeCloseTo(0.75 * 10.5, 12);
  });
  test('of an empty record are none, with nothing covered', () => {
    expect(degreeDaysOfSeries(new Float64Array(0), hour, 15.5)).toEqual({
      degreeDays: 0,
      baseTemperature: 15.5,
      covered: 0,
    });
  });
  test('agree with the extremes of the day where the whole day is below the base', () => {
    // A sine has its mean midway between its extremes, so both methods give base - mean exactly.
    const day = Float64Array.from({ length: 24 }, (_, i) => 4 + 3 * Math.sin((2 * Math.PI * (i + 0.5)) / 24));
    const extremes = degreeDaysOfExtremes([{ lowest: 1, highest: 7 }], 15.5);
    expect(degreeDaysOfSeries(day, hour, 15.5).degreeDays).toBeCloseTo(extremes.degreeDays, 9);
  });
});

test('a warmer day never has more degree days, whichever condition it falls under', () => {
  const temperature = fc.double({ min: -20, max: 35, noNaN: true });
  const up = fc.double({ min: 0, max: 10, noNaN: true });
  fc.assert(
    fc.property(temperature, up, up, (lowest, swing, warmer) => {
      const of = (low: number) =>
        degreeDaysOfExtremes([{ lowest: low, highest: low + swing }], 15.5).degreeDays;
      expect(of(lowest + warmer)).toBeLessThanOrEqual(of(lowest) + 1e-9);
      expect(of(lowest)).toBeGreaterThanOrEqual(-1e-9);
    }),
  );
});
