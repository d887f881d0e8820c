import { expect, test } from 'vitest';
import { wilson } from './wilson.ts';

test('95 of 100 may be a true share of 89 % to 98 %', () => {
  // COMPUTED from Wilson 1927: middle 0.95 + 3.841459/200 = 0.969207, half 1.959964 sqrt(0.95 0.05/100
  // + 3.841459/40000) = 0.046836, over 1.03841459.
  const { low, high } = wilson(95, 100);
  expect(low).toBeCloseTo(0.88825, 5);
  expect(high).toBeCloseTo(0.978456, 5);
});
