import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { candidatesOf, nextSteps } from '../../src/gap/index.ts';
import type { Outlook } from '../../src/heatloss/index.ts';
import { logInterval } from '../../src/maths/logInterval.ts';
import { normalProbability } from '../../src/maths/normal.ts';
import { say } from '../../src/words/index.ts';

const week = (logSd: number): Outlook => ({ test: { kind: 'metered-week' }, tier: 'metered', logSd });
const nights = (logSd: number): Outlook => ({
  test: { kind: 'more-nights', nights: 21 },
  tier: 'loggers',
  logSd,
});
const ALLOWANCE = 0.15;
const chanceOf = (ratio: number, today: number, left: number) =>
  candidatesOf([week(left)], logInterval(ratio, today), ALLOWANCE)[0].decides;

describe('the chance that a test decides', () => {
  test('1.10 known to 7 % and then to 5 % decides with a chance of 0.615', () => {
    // COMPUTED by hand from a table of the normal distribution: the new figure is spread by √(0.07² − 0.05²) = 0.0490
    // about ln 1.10; it meets below ln 1.15 − 1.96·0.05 = 0.0418, exceeds above 0.0980: Φ(−1.092) + 1 − Φ(0.055).
    expect(chanceOf(1.1, 0.07, 0.05)).toBeCloseTo(0.615, 2);
  });

  test('an interval narrower than the allowance always does', () => {
    expect(chanceOf(1.1, 0.1, 0.03)).toBe(1);
  });

  test('agrees with 20,000 drawn answers', () => {
    // Drawn with a fixed seed; binomial standard error 0.0035, tolerance five of them.
    let state = 1;
    const uniform = () => {
      state = (state * 48_271) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const [ratio, today, left] = [1.2, 0.12, 0.06];
    let decided = 0;
    for (let i = 0; i < 20_000; i++) {
      const answer = logInterval(
        Math.exp(Math.log(ratio) + Math.sqrt(today ** 2 - left ** 2) * normal()),
        left,
      );
      if (answer.high <= 1 + ALLOWANCE || answer.low > 1) decided++;
    }
    expect(Math.abs(chanceOf(ratio, today, left) - decided / 20_000)).toBeLessThan(0.0175);
  });

  test('is a chance, whatever the figures', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        fc.double({ min: 0.05, max: 0.5, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (ratio, today, share) => {
          const chance = chanceOf(ratio, today, share * today);
          expect(chance).toBeGreaterThanOrEqual(0);
          expect(chance).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});

test('half of all normal values are at most 0, 97.5 % at most 1.96', () => {
  // Any table of the normal distribution.
  expect(normalProbability(0)).toBeCloseTo(0.5, 9);
  expect(normalProbability(1.959963984540054)).toBeCloseTo(0.975, 9);
});

describe('what is proposed', () => {
  const today = logInterval(1.1, 0.12);
  const ranked = (outlooks: readonly Outlook[]) => candidatesOf(outlooks, today, ALLOWANCE);

  test('a test that hardly narrows the interval is not', () => {
    expect(ranked([week(0.119)])).toEqual([]);
  });

  test('the likeliest to decide comes first', () => {
    expect(ranked([nights(0.11), week(0.05)]).map(({ test: it }) => it.kind)).toEqual([
      'metered-week',
      'more-nights',
    ]);
  });

  test('nobody is sent for more nights that would not settle it', () => {
    const steps = nextSteps(
      { tier: 'loggers', verdict: 'undecided', goodNights: 9 },
      true,
      ranked([nights(0.115), week(0.04)]),
    );
    expect(steps.map(({ code }) => code)).toEqual(['next-not-more-nights', 'next-best-test']);
    expect(steps.map((step) => say(step).text).join(' ')).not.toMatch(/NaN|undefined/);
  });

  test('where even the best test probably leaves it open, that is said', () => {
    const steps = nextSteps(
      { tier: 'metered', verdict: 'undecided', goodNights: 9 },
      true,
      ranked([week(0.11)]),
    );
    expect(steps.map(({ code }) => code)).toEqual(['next-stays-open']);
  });
});
