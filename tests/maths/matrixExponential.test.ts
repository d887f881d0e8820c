import { expect, test } from 'vitest';
import { matrixExponential } from '../../src/maths/matrixExponential.ts';

// Rounding only: a few units of 1e-16 per squaring, up to ten squarings.
const ROUNDING = 1e-13;

const close = (actual: number[][], expected: number[][]) => {
  const size = Math.max(1, ...expected.flat().map(Math.abs));
  actual.forEach((row, i) => {
    row.forEach((it, j) => {
      expect(Math.abs(it - expected[i][j])).toBeLessThan(ROUNDING * size);
    });
  });
};

test('the exponential of a diagonal is that of its entries', () => {
  close(
    matrixExponential([
      [-300, 0],
      [0, 2],
    ]),
    [
      [Math.exp(-300), 0],
      [0, Math.exp(2)],
    ],
  );
});

test('the exponential of a quarter turn turns by a quarter', () => {
  const quarter = Math.PI / 2;
  close(
    matrixExponential([
      [0, -quarter],
      [quarter, 0],
    ]),
    [
      [0, -1],
      [1, 0],
    ],
  );
});

test('a nilpotent matrix ends the series early', () => {
  close(
    matrixExponential([
      [0, 6, 0],
      [0, 0, 4],
      [0, 0, 0],
    ]),
    [
      [1, 6, 12],
      [0, 1, 4],
      [0, 0, 1],
    ],
  );
});
