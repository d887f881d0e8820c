import { describe, expect, test } from 'vitest';
import { random } from './random.ts';

const draw = (seed: number, name: string, n: number) => {
  const stream = random(seed, name);
  return Array.from({ length: n }, () => stream.normal());
};

describe('random', () => {
  test('gives the same stream for the same seed and name, and another for any other', () => {
    expect(draw(1, 'wind', 5)).toEqual(draw(1, 'wind', 5));
    expect(draw(1, 'wind', 5)).not.toEqual(draw(2, 'wind', 5));
    expect(draw(1, 'wind', 5)).not.toEqual(draw(1, 'cloud', 5));
  });

  test('normals have mean 0 and deviation 1', () => {
    const n = 40_000;
    const values = draw(7, 'normals', n);
    const mean = values.reduce((sum, value) => sum + value, 0) / n;
    const variance = values.reduce((sum, value) => sum + value ** 2, 0) / n;
    // Four standard errors: 1/sqrt(n) of the mean, sqrt(2/n) of the variance.
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(n));
    expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / n));
  });
});
