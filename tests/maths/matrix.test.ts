import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dot, matrixOf, solvePositiveDefinite } from '../../src/maths/matrix.ts';

const entry = fc.double({ min: -10, max: 10, noNaN: true });

test('the solution of a positive definite system satisfies it', () => {
  const system = fc.integer({ min: 1, max: 6 }).chain((size) =>
    fc.record({
      factor: fc.array(fc.array(entry, { minLength: size, maxLength: size }), {
        minLength: size,
        maxLength: size,
      }),
      right: fc.array(entry, { minLength: size, maxLength: size }),
    }),
  );
  fc.assert(
    fc.property(system, ({ factor, right }) => {
      // the added 1 bounds the condition by some 6·6·10² + 1, so 1e-9 leaves digits to spare
      const matrix = matrixOf(right.length, (i, j) => dot(factor[i], factor[j]) + (i === j ? 1 : 0));
      const solution = solvePositiveDefinite(matrix, right);
      expect(solution).not.toBeNull();
      if (solution === null) return;
      matrix.forEach((row, i) => {
        expect(Math.abs(dot(row, solution) - right[i])).toBeLessThan(1e-9);
      });
    }),
  );
});

test('a matrix that is not positive definite has no solution here', () => {
  expect(
    solvePositiveDefinite(
      [
        [1, 2],
        [2, 1],
      ],
      [1, 1],
    ),
  ).toBeNull(); // eigenvalues 3 and −1
  expect(solvePositiveDefinite([[0]], [1])).toBeNull();
});
