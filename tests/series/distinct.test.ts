import { describe, expect, test } from 'vitest';
import { distinctOf } from '../../src/series/distinct.ts';

describe('distinctOf', () => {
  test('gives each value once, the smallest first, and leaves out what is missing', () => {
    const values = Float64Array.of(20.1, 19.5, Number.NaN, 20.1, -3, 19.5);
    expect([...distinctOf(values)]).toEqual([-3, 19.5, 20.1]);
    expect(distinctOf(Float64Array.of(Number.NaN))).toHaveLength(0);
  });

  test('reads a part of a longer array as that part alone', () => {
    expect([...distinctOf(Float64Array.of(9, 1, 2, 1, 8).subarray(1, 4))]).toEqual([1, 2]);
  });

  test('gives every value, repeats among them, where tens of thousands are different', () => {
    const values = Float64Array.from({ length: 20_002 }, (_, i) => 20_001 - Math.max(1, i));
    expect(distinctOf(values)).toEqual(values.slice().sort());
  });
});
