import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intervalsOver, thin } from '../../server/api/thin.ts';

const span = fc
  .tuple(fc.integer({ min: -1e9, max: 4e9 }), fc.integer({ min: 0, max: 4e8 }))
  .map(([from, length]) => ({ from, to: from + length }));
const readings = fc
  .uniqueArray(fc.integer({ min: -2000, max: 12_000 }), { maxLength: 200 })
  .chain((times) =>
    fc.tuple(
      fc.constant(times.toSorted((a, b) => a - b)),
      fc.array(fc.double({ min: -50, max: 50, noNaN: true }), {
        minLength: times.length,
        maxLength: times.length,
      }),
    ),
  )
  .map(([times, values]) => times.map((time, i) => ({ time, min: values[i], max: values[i] })));

const together = (samples: readonly { time: number; min: number; max: number }[]) => ({
  time: Float64Array.from(samples, ({ time }) => time),
  min: Float64Array.from(samples, ({ min }) => min),
  max: Float64Array.from(samples, ({ max }) => max),
});

describe('intervals', () => {
  test('are at most as many as were asked for and hold the whole span', () => {
    fc.assert(
      fc.property(span, fc.integer({ min: 10, max: 4000 }), ({ from, to }, points) => {
        const { start, step, count } = intervalsOver(from, to, points);
        expect(count).toBeLessThanOrEqual(points);
        expect(start).toBeLessThanOrEqual(from);
        expect(start + count * step).toBeGreaterThan(to);
      }),
    );
  });

  test.each([
    ['an hour', 3600, 3600],
    ['two days', 2 * 86_400, 86_400],
  ])('of %s or longer begin on whole ones and are whole ones', (_, longer, unit) => {
    fc.assert(
      fc.property(span, fc.integer({ min: 10, max: 4000 }), ({ from, to }, points) => {
        const { start, step } = intervalsOver(from, to, points);
        if ((to - from) / points < longer) return;
        expect([start % unit === 0, step % unit]).toEqual([true, 0]);
      }),
    );
  });
});

describe('thinning', () => {
  test('keeps the least and the greatest reading of every interval', () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: 10, max: 400 }), (samples, points) => {
        const intervals = intervalsOver(0, 10_000, points);
        const thinned = thin(together(samples), intervals, 0);
        for (let i = 0; i < intervals.count; i++) {
          const from = intervals.start + i * intervals.step;
          const own = samples.filter(({ time }) => time >= from && time < from + intervals.step);
          expect(thinned.min[i]).toBe(own.length === 0 ? Number.NaN : Math.min(...own.map(({ min }) => min)));
          expect(thinned.max[i]).toBe(own.length === 0 ? Number.NaN : Math.max(...own.map(({ max }) => max)));
        }
      }),
    );
  });

  test('draws a straight line between two readings of one step, and leaves a longer gap open', () => {
    const at = (time: number, value: number) => ({ time, min: value, max: value });
    const samples = [at(0.5, 0), at(4.5, 4), at(10.5, 9)];
    const { min, max } = thin(together(samples), { start: 0, step: 1, count: 12 }, 4);
    const open = Number.NaN;
    expect([...min]).toEqual([0, 1, 2, 3, 4, open, open, open, open, open, 9, open]);
    expect(max).toEqual(min);
  });

  test('draws the line through a window that no reading falls into', () => {
    const samples = [
      { time: 0, min: 0, max: 0 },
      { time: 3600, min: 36, max: 36 },
    ];
    const { min } = thin(together(samples), { start: 1000, step: 100, count: 2 }, 3600);
    expect(min[0]).toBeCloseTo(10.5, 12);
    expect(min[1]).toBeCloseTo(11.5, 12);
  });
});
