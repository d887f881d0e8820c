import { expect, test } from 'vitest';
import { fewestHits } from './slack.ts';

test('of 20 tries at 95 %, 16 hits are as few as chance gives once in a hundred', () => {
  // COMPUTED: P(X <= 15) = 0.00257, P(X <= 16) = 0.01590 (binomial, n 20, p 0.95).
  expect(fewestHits(20)).toBe(16);
});

test('of 12 tries at 95 %, 9', () => {
  // COMPUTED: P(X <= 8) = 0.00224, P(X <= 9) = 0.01957 (binomial, n 12, p 0.95).
  expect(fewestHits(12)).toBe(9);
});
