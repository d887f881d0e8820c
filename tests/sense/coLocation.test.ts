/** Loggers side by side: what they differ by, and how well it is known. */
import fc from 'fast-check';
import { median } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { type CoLocation, coLocationOffsets, steadyHumidity } from '../../src/sense/index.ts';
import { type LoggerKind, ordinaryLogger, readLogger, type Trace } from '../proving/loggers.ts';
import { random } from '../proving/random.ts';
import { wander } from '../proving/weather.ts';
import { HOUR } from './simulatedHouse.ts';

const start = Date.UTC(2027, 0, 2, 12) / 1000;

/** Loggers without bias in one room's air that wanders by some tenths; the biases are added, and known. */
function sideBySide(seed: number, biases: readonly number[], hours: number, kind: LoggerKind, drift = 0) {
  const n = (hours + 12) * 60;
  const slow = wander(random(seed, 'room'), n, 60, 3 * HOUR, HOUR / 2);
  const air: Trace = {
    start: start - 6 * HOUR,
    step: 60,
    temperature: slow.map((it, k) => 19 + 0.2 * it + (drift * k) / 60),
    relativeHumidity: slow.map((it) => 0.45 + 0.01 * it),
  };
  return biases.map((bias, k) => {
    const draws = random(seed, `slow error ${k}`);
    // of its own, not shared and not white: draughts, where it lies
    const own = wander(draws, n, 60, HOUR, HOUR / 4);
    const trace = { ...air, temperature: air.temperature.map((it, i) => it + bias + 0.03 * own[i]) };
    const readings = readLogger(
      seed,
      `logger ${k}`,
      { ...kind, biasDeviation: 0, humidityBiasDeviation: 0 },
      trace,
      start,
      start + hours * HOUR,
    );
    return {
      file: `${k}.csv`,
      readings: {
        time: Float64Array.from(readings, ({ time }) => time),
        value: Float64Array.from(readings, ({ temperature }) => temperature),
      },
    };
  });
}

const span = (hours: number) => ({ from: start, to: start + hours * HOUR });
const offsetsOf = (found: CoLocation) => {
  if (found.kind !== 'offsets') throw new Error(found.kind);
  return found;
};

describe('offsets from a spell side by side', () => {
  test.each([4, 24])(
    'over %i hours lie within two standard errors of the truth 95 times in 100 or more',
    (hours) => {
      let [within, all] = [0, 0];
      for (let seed = 0; seed < 60; seed++) {
        const draws = random(seed, 'biases');
        const biases = Array.from({ length: 5 }, () => 0.2 * draws.normal());
        const { offsets } = offsetsOf(
          coLocationOffsets(sideBySide(seed, biases, hours, ordinaryLogger), span(hours)),
        );
        offsets.forEach(({ offset, standardError }, k) => {
          all++;
          if (Math.abs(offset - (biases[k] - median(biases))) <= 2 * standardError) within++;
        });
      }
      // 300 offsets, five of a house hanging together: 95 % less two binomial deviations of 60 houses is 0.894
      expect(within / all).toBeGreaterThan(0.9);
    },
  );

  test('know that neighbouring readings resemble each other: fewer count than there are', () => {
    const found = offsetsOf(coLocationOffsets(sideBySide(1, [0, 0.1, 0.2], 24, ordinaryLogger), span(24)));
    for (const { effectiveReadings } of found.offsets) expect(effectiveReadings).toBeLessThan(23 * 6);
  });

  test('are never known better than the display allows', () => {
    const half = { ...ordinaryLogger, resolution: 0.5 };
    const { offsets } = offsetsOf(coLocationOffsets(sideBySide(2, [0, 0.1, 0.2], 24, half), span(24)));
    // COMPUTED: a uniform step of 0.5 has the deviation 0.5/√12 = 0.1443
    for (const { standardError } of offsets) expect(standardError).toBeGreaterThanOrEqual(0.1443);
  });

  test('move with a logger that is moved, and only that', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 3, noNaN: true }), (more) => {
        const loggers = sideBySide(3, [0, 0.1, 0.2, -0.1, -0.2], 6, ordinaryLogger);
        const before = offsetsOf(coLocationOffsets(loggers, span(6))).offsets;
        const moved = loggers.map((it, k) =>
          k === 2
            ? { ...it, readings: { ...it.readings, value: it.readings.value.map((v) => v + more) } }
            : it,
        );
        const after = offsetsOf(coLocationOffsets(moved, span(6))).offsets;
        // logger 2 is the warmest of all in nearly every cell, so the median hardly notices: within the noise
        expect(after[2].offset - before[2].offset).toBeCloseTo(more, 1);
        expect(after[0].offset - before[0].offset).toBeCloseTo(0, 1);
      }),
      { numRuns: 20 },
    );
  });

  test('leave out the first hour, and say so', () => {
    const { from, to } = offsetsOf(coLocationOffsets(sideBySide(4, [0, 0.1], 6, ordinaryLogger), span(6)));
    expect(from).toBeGreaterThanOrEqual(start + HOUR);
    expect(to).toBeLessThanOrEqual(start + 6 * HOUR);
  });
});

describe('a spell that says little', () => {
  test('of an hour and a half is too short', () => {
    const found = coLocationOffsets(sideBySide(5, [0, 0.1], 1.5, ordinaryLogger), span(1.5));
    expect(found.kind).toBe('too short');
  });

  test('of two and a half hours gives offsets with a warning', () => {
    const found = coLocationOffsets(sideBySide(5, [0, 0.1], 2.5, ordinaryLogger), span(2.5));
    expect(found).toMatchObject({ kind: 'offsets', warnings: ['short spell'] });
  });

  test('while the room warms by a kelvin an hour gives offsets with a warning', () => {
    const found = coLocationOffsets(sideBySide(6, [0, 0.1], 6, ordinaryLogger, 1), span(6));
    expect(found).toMatchObject({ kind: 'offsets', warnings: ['not steady'] });
  });

  test('with one logger only says nothing, and names those that were absent', () => {
    const [one, other] = sideBySide(7, [0, 0.1], 6, ordinaryLogger);
    const late = {
      ...other,
      readings: { ...other.readings, time: other.readings.time.map((t) => t + 9 * HOUR) },
    };
    expect(coLocationOffsets([one, late], span(6))).toEqual({
      kind: 'too few loggers',
      absent: [{ file: '1.csv' }],
    });
  });

  test('humidity has its own measure of steady', () => {
    const humid = sideBySide(8, [0, 0.1], 6, ordinaryLogger).map((it) => ({
      ...it,
      readings: { ...it.readings, value: it.readings.value.map((v, k) => 0.4 + v / 1000 + k / 200) },
    }));
    expect(offsetsOf(coLocationOffsets(humid, span(6), steadyHumidity)).warnings).toEqual(['not steady']);
  });
});
