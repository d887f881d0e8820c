import fc from 'fast-check';
import { expect, test } from 'vitest';
import { GRID_STEP, gridOver, indexAt, timeAt, timesBetween } from '../../src/series/grid.ts';

const instant = fc.integer({ min: 0, max: 2_000_000_000 });

test('the cells of a record are ten minutes, centred on whole ten minutes', () => {
  expect(gridOver(1000, 2500)).toEqual({ start: 600, step: GRID_STEP, length: 5 });
  expect(gridOver(1200, 2400)).toEqual({ start: 1200, step: 600, length: 3 });
});

test('every instant of the record lies in a cell of its grid', () => {
  fc.assert(
    fc.property(
      instant,
      fc.integer({ min: 0, max: 86_400 }),
      fc.integer({ min: 1, max: 7200 }),
      (first, span, step) => {
        const grid = gridOver(first, first + span, step);
        expect(grid.start % step).toBe(0);
        for (const it of [first, first + span / 2, first + span]) {
          const index = indexAt(grid, it);
          expect(index).toBeGreaterThanOrEqual(0);
          expect(index).toBeLessThan(grid.length);
          expect(Math.abs(timeAt(grid, index) - it)).toBeLessThanOrEqual(step / 2);
        }
      },
    ),
  );
});

test('a cell begins half a step before its centre and ends just before half a step after', () => {
  const grid = gridOver(0, 6000);
  expect(indexAt(grid, 900)).toBe(2);
  expect(indexAt(grid, 1499)).toBe(2);
  expect(indexAt(grid, 1500)).toBe(3);
  expect(indexAt(grid, -900)).toBe(-1);
});

test('the times of a run of cells include both ends', () => {
  expect([...timesBetween(gridOver(0, 6000), 2, 4)]).toEqual([1200, 1800, 2400]);
});

test('a record that ends before it begins, or no step, is a mistake in the call', () => {
  expect(() => gridOver(10, 9)).toThrow(RangeError);
  expect(() => gridOver(0, 10, 0)).toThrow(RangeError);
});
