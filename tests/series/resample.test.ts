import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Grid, gridOver, timeAt } from '../../src/series/grid.ts';
import { resample, resampleIntervalMeans } from '../../src/series/resample.ts';

const f64 = (...values: number[]) => Float64Array.from(values);
const grid: Grid = { start: 1_800_000_000, step: 600, length: 12 };
const { start } = grid;

/** Instants from an hour before the grid to an hour after it, at uneven spacings. */
const times = fc
  .array(fc.integer({ min: 5, max: 3000 }), { minLength: 20, maxLength: 200 })
  .map((spacings) => {
    let at = start - 3600;
    return Float64Array.from([at, ...spacings.map((it) => (at += it))]);
  });

describe('momentary readings', () => {
  test('that rise in a straight line give in each cell the line at its centre, however they are spaced', () => {
    fc.assert(
      fc.property(times, fc.double({ min: -1e-3, max: 1e-3, noNaN: true }), (time, slope) => {
        const cells = resample(
          time,
          time.map((it) => 12 + slope * (it - start)),
          grid,
          3000,
        );
        cells.forEach((it, i) => {
          const known = timeAt(grid, i) + 300 <= time[time.length - 1];
          // rounding of instants near 2e9 (2e-7 s) against 1e-3 K/s
          if (known) expect(Math.abs(it - (12 + slope * 600 * i))).toBeLessThan(1e-9);
          else expect(it).toBeNaN();
        });
      }),
    );
  });

  test('of a triangle give the exact mean over the cell of its tip', () => {
    // 0 at ±600 s, 1 at 0: over ±300 s the mean is 3/4, over the next cell (1/2)·(1/2)·(1/2) = 1/8
    const cells = resample(
      f64(start - 1200, start - 600, start, start + 600, start + 1200),
      f64(0, 0, 1, 0, 0),
      grid,
      600,
    );
    expect(cells[0]).toBeCloseTo(0.75, 12);
    expect(cells[1]).toBeCloseTo(0.125, 12);
  });

  test('every minute give the mean of the ten minutes about the centre', () => {
    const time = Float64Array.from({ length: 121 }, (_, i) => start - 3600 + 60 * i);
    const cells = resample(
      time,
      time.map((_, i) => (i % 2 === 0 ? 20 : 21)),
      grid,
      300,
    );
    expect(cells[1]).toBeCloseTo(20.5, 12);
  });

  test('every hour give the straight line between them', () => {
    const cells = resample(f64(start - 3600, start, start + 3600), f64(10, 10, 16), grid, 3600);
    expect(cells[3]).toBeCloseTo(13, 12);
  });

  test('are never drawn across a gap, and no cell beside one is spoilt', () => {
    fc.assert(
      fc.property(times, fc.integer({ min: 60, max: 2500 }), (time, maxGap) => {
        const cells = resample(
          time,
          time.map(() => 7),
          grid,
          maxGap,
        );
        cells.forEach((it, i) => {
          const [from, to] = [timeAt(grid, i) - 300, timeAt(grid, i) + 300];
          const inGap = time.some(
            (t, k) => k > 0 && t - time[k - 1] > maxGap && time[k - 1] < to && t > from,
          );
          const outside = to > time[time.length - 1];
          if (inGap || outside) expect(it).toBeNaN();
          else expect(it).toBeCloseTo(7, 9);
        });
      }),
    );
  });

  test('one of which is missing leave a gap from the one before to the one after', () => {
    const time = Float64Array.from({ length: 13 }, (_, i) => start - 600 + 600 * i);
    const cells = resample(
      time,
      time.map((_, i) => (i === 5 ? Number.NaN : 3)),
      grid,
      600,
    );
    expect([...cells.slice(0, 9)].map(Number.isNaN)).toEqual([
      false,
      false,
      false,
      true,
      true,
      true,
      false,
      false,
      false,
    ]);
  });

  test('give nothing outside of the record, nor from one reading or none', () => {
    const cells = resample(f64(start + 300, start + 900), f64(1, 1), grid, 600);
    expect(cells[0]).toBeNaN();
    expect(cells[1]).toBe(1);
    expect(cells[2]).toBeNaN();
    expect(resample(f64(start), f64(1), grid, 600).every(Number.isNaN)).toBe(true);
    expect(resample(f64(), f64(), grid, 600).every(Number.isNaN)).toBe(true);
  });

  test('without a value each are a mistake in the call', () => {
    expect(() => resample(f64(1, 2), f64(1), grid, 600)).toThrow(RangeError);
  });
});

describe('means over an interval', () => {
  // half-hours: 100 W up to 00:30, 300 W up to 01:00, 500 W up to 01:30
  const time = f64(start + 1500, start + 3300, start + 5100);
  const value = f64(100, 300, 500);

  test('stamped at the end hold over the time before, the first of them over the usual spacing', () => {
    const cells = resampleIntervalMeans(time, value, grid, 3600, 'end');
    // cells end at 300, 900, 1500 ...; the first interval begins at start − 300
    expect([...cells]).toEqual([
      100,
      100,
      100,
      300,
      300,
      300,
      500,
      500,
      500,
      Number.NaN,
      Number.NaN,
      Number.NaN,
    ]);
  });

  test('stamped at the start hold over the time after, the last of them over the usual spacing', () => {
    const cells = resampleIntervalMeans(time, value, grid, 3600, 'start');
    expect([...cells]).toEqual([
      Number.NaN,
      Number.NaN,
      Number.NaN,
      100,
      100,
      100,
      300,
      300,
      300,
      500,
      500,
      500,
    ]);
  });

  test('that end within a cell count there by their time', () => {
    // the first mean ends 200 s after the beginning of cell 3, which reaches from start + 1500 to start + 2100
    const cells = resampleIntervalMeans(
      f64(start - 100, start + 1700, start + 3500),
      f64(0, 60, 120),
      grid,
      3600,
      'end',
    );
    expect(cells[3]).toBeCloseTo((200 * 60 + 400 * 120) / 600, 9);
  });

  test('keep their sum, when no time is missing', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 5000, noNaN: true }), { minLength: 3, maxLength: 50 }),
        (values) => {
          const time = Float64Array.from(values, (_, i) => start + 900 * (i + 1));
          // from start − 300 on, so that cells and record begin together
          const aligned = time.map((it) => it - 300);
          const wide = gridOver(start, start + 900 * values.length);
          const cells = resampleIntervalMeans(aligned, Float64Array.from(values), wide, 900, 'end');
          const whole = Math.floor((900 * values.length) / 600);
          const fromCells = cells.subarray(0, whole).reduce((sum, it) => sum + it * 600, 0);
          const covered = whole * 600;
          const fromValues = values.reduce(
            (sum, it, i) => sum + it * Math.min(900, Math.max(0, covered - 900 * i)),
            0,
          );
          expect(Math.abs(fromCells - fromValues)).toBeLessThan(1e-6 * (1 + fromValues));
        },
      ),
    );
  });

  test('after a gap hold over the usual spacing, and the gap stays empty', () => {
    const cells = resampleIntervalMeans(
      f64(start + 300, start + 900, start + 1500, start + 5100),
      f64(1, 1, 1, 9),
      grid,
      1800,
      'end',
    );
    expect([...cells.slice(0, 9)]).toEqual([
      1,
      1,
      1,
      Number.NaN,
      Number.NaN,
      Number.NaN,
      Number.NaN,
      Number.NaN,
      9,
    ]);
  });

  test('of which one is missing leave its interval empty', () => {
    const cells = resampleIntervalMeans(time, f64(100, Number.NaN, 500), grid, 3600, 'end');
    expect([...cells.slice(0, 9)]).toEqual([
      100,
      100,
      100,
      Number.NaN,
      Number.NaN,
      Number.NaN,
      500,
      500,
      500,
    ]);
  });

  test('most of which stand apart do not stretch over the gaps between them', () => {
    const apart = f64(start + 300, start + 900, start + 5100, start + 6900);
    const cells = resampleIntervalMeans(apart, f64(1, 1, 1, 1), grid, 900, 'end');
    expect(
      [...cells]
        .map(Number.isNaN)
        .map((it) => (it ? '-' : '1'))
        .join(''),
    ).toBe('11------1--1');
  });

  test('of which there is only one have no interval that is known', () => {
    expect(resampleIntervalMeans(f64(start + 300), f64(1), grid, 3600, 'end').every(Number.isNaN)).toBe(true);
  });
});
