import { expect, test } from 'vitest';
import { proposedExtraFraction } from '../../src/fabric/timberConventions.ts';

test('studs of 45 mm at 600 mm are half of the 15 % that a timber-frame wall has', () => {
  // MEMORY: BR 443, 0.15; COMPUTED by hand: 0.15 - 0.075
  expect(proposedExtraFraction('timber-frame wall', 0.045, 0.6)).toBeCloseTo(0.075, 12);
});

test('members that come to more than the convention get nothing added', () => {
  // 47 mm at 400 mm are 11.75 %, above the 8 % of rafters (MEMORY: BR 443)
  expect(proposedExtraFraction('rafters', 0.047, 0.4)).toBe(0);
});
