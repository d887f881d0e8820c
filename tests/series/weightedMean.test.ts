import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { weightedMean } from '../../src/series/weightedMean.ts';

const f64 = (...values: number[]) => Float64Array.from(values);
const gap = Number.NaN;

const cell = fc.oneof(
  { weight: 4, arbitrary: fc.double({ min: -5, max: 30, noNaN: true }) },
  fc.constant(gap),
);
const loggers = fc.integer({ min: 1, max: 30 }).chain((cells) =>
  fc.array(
    fc.record({
      series: fc.array(cell, { minLength: cells, maxLength: cells }).map((it) => Float64Array.from(it)),
      weight: fc.double({ min: 1, max: 100, noNaN: true }),
    }),
    { minLength: 1, maxLength: 5 },
  ),
);
const meanOf = (some: readonly { series: Float64Array; weight: number }[]) =>
  weightedMean(
    some.map(({ series }) => series),
    some.map(({ weight }) => weight),
  );

/** Equal to rounding, missing where the other is missing. */
function expectSame(a: Float64Array, b: Float64Array) {
  a.forEach((it, i) => {
    if (Number.isNaN(it)) expect(b[i]).toBeNaN();
    else expect(b[i]).toBeCloseTo(it, 9);
  });
}

describe('the inside temperature', () => {
  test('counts each room by its volume', () => {
    expect([...weightedMean([f64(20, 10), f64(16, 10)], [30, 10])]).toEqual([19, 10]);
  });

  test('of one logger is its own, gaps included', () => {
    fc.assert(
      fc.property(fc.array(cell, { minLength: 1 }), (values) => {
        const series = Float64Array.from(values);
        expectSame(series, weightedMean([series], [40]));
      }),
    );
  });

  test('of loggers that all read the same is what they read', () => {
    fc.assert(
      fc.property(
        fc.array(cell, { minLength: 1 }),
        fc.array(fc.double({ min: 1, max: 100, noNaN: true }), { minLength: 1, maxLength: 5 }),
        (values, weights) => {
          const series = Float64Array.from(values);
          expectSame(
            series,
            weightedMean(
              weights.map(() => series),
              weights,
            ),
          );
        },
      ),
    );
  });

  test('does not depend on the order of the loggers', () => {
    fc.assert(
      fc.property(loggers, (some) => {
        expectSame(meanOf(some), meanOf([...some].reverse()));
      }),
    );
  });

  test('does not step when a logger drops out that stood a steady 4 K below', () => {
    const hall = f64(20, 19.5, 19, 18.5, 18);
    const loft = f64(16, 15.5, gap, gap, 14);
    const mean = weightedMean([hall, loft], [30, 10]);
    [19, 18.5, 18, 17.5, 17].forEach((expected, i) => {
      expect(mean[i]).toBeCloseTo(expected, 12);
    });
  });

  test('is that of all loggers whenever one of several with steady offsets drops out', () => {
    const course = Array.from({ length: 40 }, (_, i) => 18 - i / 20 + Math.sin(i));
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 3, maxLength: 5 }),
        fc.integer({ min: 0, max: 2 }),
        fc.integer({ min: 1, max: 39 }),
        (offsets, missing, from) => {
          const full = offsets.map((offset) => Float64Array.from(course, (it) => it + offset));
          const torn = full.map((it, k) => (k === missing ? it.map((v, i) => (i >= from ? gap : v)) : it));
          const weights = offsets.map((_, k) => 10 + k);
          expectSame(weightedMean(full, weights), weightedMean(torn, weights));
        },
      ),
    );
  });

  test('is not known where the missing loggers hold more than half of the volume', () => {
    expect([...weightedMean([f64(20, gap, 20), f64(16, 16, gap)], [30, 10])]).toEqual([19, gap, 19]);
    expect([...weightedMean([f64(20, gap), f64(16, 16)], [10, 10])]).toEqual([18, 18]); // exactly half is enough
  });

  test('of loggers that are never there together is that of those present', () => {
    expect([...weightedMean([f64(20, gap, gap), f64(gap, 16, gap)], [30, 10])]).toEqual([20, 16, gap]);
  });
});

test('no series, unequal lengths or a weight of 0 are mistakes in the call', () => {
  expect(() => weightedMean([], [])).toThrow(RangeError);
  expect(() => weightedMean([f64(1), f64(1, 2)], [1, 1])).toThrow(RangeError);
  expect(() => weightedMean([f64(1)], [0])).toThrow(RangeError);
  expect(() => weightedMean([f64(1)], [1, 1])).toThrow(RangeError);
});
