import { describe, expect, test } from 'vitest';
import { gridOver } from '../../src/series/grid.ts';
import { laid, layingOnce } from '../../src/series/laying.ts';

const readings = {
  time: Float64Array.from({ length: 30 }, (_, i) => i * 300),
  value: Float64Array.from({ length: 30 }, (_, i) => 20 + (i % 7)),
};
const grid = gridOver(0, 8700);

describe('layingOnce', () => {
  test('lays as laid does, on the same grid only once', () => {
    const lay = layingOnce();
    const first = lay(readings, grid);
    expect(first).toEqual(laid(readings, grid));
    expect(lay({ ...readings }, { ...grid })).toBe(first);
  });

  test('another grid, or the same values at other times, is laid anew', () => {
    const lay = layingOnce();
    lay(readings, grid);
    const other = gridOver(600, 9300);
    expect(lay(readings, other)).toEqual(laid(readings, other));
    const later = { ...readings, time: readings.time.map((it) => it + 150) };
    expect(lay(later, other)).toEqual(laid(later, other));
  });
});
