import { describe, expect, test } from 'vitest';
import { type LoggerKind, ordinaryLogger, readLogger } from './loggers.ts';

const exact: LoggerKind = {
  ...ordinaryLogger,
  biasDeviation: 0,
  noise: 0,
  humidityBiasDeviation: 0,
  humidityNoise: 0,
  resolution: 1e-6,
};
const step = 60;
const ramp = {
  start: 0,
  step,
  temperature: Float64Array.from({ length: 3000 }, (_, k) => (k * step) / 3600), // a kelvin an hour
  relativeHumidity: new Float64Array(3000).fill(0.5),
};

describe('readLogger', () => {
  test('lags behind a steady rise by its time constant', () => {
    const [late] = readLogger(1, 'a', exact, ramp, 120_000, 120_000);
    // The lag in steps of 60 s is the time constant less half a step, as the lag is taken at step ends.
    expect(Math.abs(late.temperature - (120_000 - 480) / 3600)).toBeLessThan(step / 2 / 3600 + 1e-3);
  });

  test('with its clock ten minutes fast stamps each temperature ten minutes late', () => {
    const right = readLogger(1, 'a', exact, ramp, 60_000, 90_000);
    const fast = readLogger(1, 'a', { ...exact, clockError: 600 }, ramp, 60_600, 90_600);
    expect(fast.map(({ time }) => time - 600)).toEqual(right.map(({ time }) => time));
    fast.forEach(({ temperature }, k) => {
      expect(temperature).toBeCloseTo(right[k].temperature, 9);
    });
  });

  test('shows whole steps of its display', () => {
    for (const { temperature, relativeHumidity } of readLogger(1, 'a', ordinaryLogger, ramp, 6000, 90_000)) {
      expect(10 * temperature).toBeCloseTo(Math.round(10 * temperature), 9);
      expect(200 * relativeHumidity).toBeCloseTo(Math.round(200 * relativeHumidity), 9);
    }
  });

  test('has a bias of its own, of the deviation stated', () => {
    const kind = { ...exact, biasDeviation: 0.15 };
    const [truth] = readLogger(1, 'a', exact, ramp, 120_000, 120_000);
    const n = 400;
    let square = 0;
    for (let k = 0; k < n; k++) {
      const [reading] = readLogger(1, `logger ${k}`, kind, ramp, 120_000, 120_000);
      square += (reading.temperature - truth.temperature) ** 2 / n;
    }
    // Four standard errors of a deviation: 1/sqrt(2n) each.
    expect(Math.abs(Math.sqrt(square) / 0.15 - 1)).toBeLessThan(4 / Math.sqrt(2 * n));
  });
});
