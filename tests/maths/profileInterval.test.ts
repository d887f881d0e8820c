import { expect, test } from 'vitest';
import { profileEnd } from '../../src/maths/profileInterval.ts';

test('of a normal likelihood the ends are 1.96 standard deviations off', () => {
  const riseAt = (value: number) => ((value - 3) / 0.2) ** 2;
  // To a fiftieth of a standard deviation, as asked for
  expect(Math.abs(profileEnd(3, -0.05, riseAt) - (3 - 1.96 * 0.2))).toBeLessThan(0.02 * 0.2);
  expect(Math.abs(profileEnd(3, 4, riseAt) - (3 + 1.96 * 0.2))).toBeLessThan(0.02 * 0.2);
});

test('values that are barred are not gone to', () => {
  const riseAt = (value: number) => (value > 2 ? Number.POSITIVE_INFINITY : value ** 2);
  // To a fiftieth of a standard deviation, as asked for
  expect(Math.abs(profileEnd(0, 10, riseAt) - 1.96)).toBeLessThan(0.02);
});

test('a likelihood that is flatter to one side reaches further there', () => {
  const riseAt = (value: number) => (Math.exp(-value) - 1) ** 2 * 10;
  const target = Math.sqrt(3.841458820694124 / 10);
  // The closed form: e^(−x) = 1 ± √(3.84/10)
  expect(Math.abs(profileEnd(0, 0.1, riseAt) + Math.log(1 - target))).toBeLessThan(0.03);
  expect(Math.abs(profileEnd(0, -0.1, riseAt) + Math.log(1 + target))).toBeLessThan(0.03);
});
