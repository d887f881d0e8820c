import fc from 'fast-check';
import { expect, test } from 'vitest';
import { studentTQuantile, tInterval } from '../../src/maths/studentT.ts';

test('t is symmetric about 0', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 0.999, noNaN: true }),
      fc.integer({ min: 1, max: 200 }),
      (p, freedom) => {
        // 1 − p is itself rounded, and the search behind t is good to about 1e-8 of the tail
        expect(Math.abs(studentTQuantile(p, freedom) + studentTQuantile(1 - p, freedom))).toBeLessThan(1e-4);
      },
    ),
  );
});

test('an interval lies evenly about the mean and narrows as the degrees of freedom grow', () => {
  const few = tInterval(10, 2, 3);
  const many = tInterval(10, 2, 30);
  expect(few.low + few.high).toBeCloseTo(20, 12);
  expect(few.high - few.low).toBeGreaterThan(many.high - many.low);
});

test('a probability of 0 or 1, or no degrees of freedom, is a mistake in the call', () => {
  expect(() => studentTQuantile(1, 5)).toThrow(RangeError);
  expect(() => studentTQuantile(0, 5)).toThrow(RangeError);
  expect(() => studentTQuantile(0.975, 0)).toThrow(RangeError);
});
