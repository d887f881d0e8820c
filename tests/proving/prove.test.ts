import { describe, expect, test } from 'vitest';
import { covers, judgeHouse, judgingSeeds, wallKinds } from './prove.ts';

/** A slice of `npm run prove`: three judging seeds of each kind of wall. */
describe('on simulated houses that no interval was set on', () => {
  const judged = judgingSeeds
    .slice(0, 3)
    .flatMap((seed) => wallKinds.flatMap((kind) => judgeHouse(kind, seed)));

  test.each(['capacity-over-tau', 'heat-then-cool'] as const)(
    'the interval of %s holds the truth',
    (method) => {
      const own = judged.filter((it) => it.method === method);
      expect(own.length).toBeGreaterThanOrEqual(10);
      // Of 12 records at 95 %, fewer than 10 within has a probability of 2 % (binomial).
      expect(own.filter(covers).length).toBeGreaterThanOrEqual(own.length - 2);
    },
  );

  test('the heated night is nearer to the truth than the plain form in the middle of the records', () => {
    const middle = (method: string) => {
      const errors = judged
        .filter((it) => it.method === method)
        .map(({ truth, estimate }) => Math.abs(Math.log(estimate.value / truth)))
        .sort((a, b) => a - b);
      return errors[errors.length >> 1];
    };
    expect(middle('heat-then-cool')).toBeLessThan(middle('capacity-over-tau'));
  });
});
