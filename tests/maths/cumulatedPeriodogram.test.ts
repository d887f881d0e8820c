import { expect, test } from 'vitest';
import { cumulatedPeriodogram } from '../../src/maths/cumulatedPeriodogram.ts';
import { random } from '../proving/random.ts';

test('a pure rhythm has all of its variance at one frequency', () => {
  const { share } = cumulatedPeriodogram(
    Float64Array.from({ length: 64 }, (_, t) => 3 + Math.cos((2 * Math.PI * 5 * t) / 64)),
  );
  // Frequency k stands at k − 1; rounding only.
  expect(share[3]).toBeLessThan(1e-12);
  expect(Math.abs(share[4] - 1)).toBeLessThan(1e-12);
});

test('of independent values about one series in twenty goes beyond the bound', () => {
  const source = random(3, 'white');
  const runs = 400;
  let beyond = 0;
  for (let run = 0; run < runs; run++) {
    const { distance, bound } = cumulatedPeriodogram(
      Float64Array.from({ length: 101 }, () => source.normal()),
    );
    if (distance > bound) beyond++;
  }
  // 20 expected, standard deviation of the binomial 4.4: three of them to either side.
  expect(beyond).toBeGreaterThanOrEqual(7);
  expect(beyond).toBeLessThanOrEqual(33);
});

test('values that follow each other go beyond it', () => {
  const source = random(4, 'red');
  let last = 0;
  const red = Float64Array.from({ length: 200 }, () => {
    last = 0.6 * last + source.normal();
    return last;
  });
  const { distance, bound } = cumulatedPeriodogram(red);
  expect(distance).toBeGreaterThan(bound);
});

test('four values have no two frequencies', () => {
  expect(() => cumulatedPeriodogram([1, 2, 3, 4])).toThrow(RangeError);
});
