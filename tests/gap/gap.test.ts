import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PooledTimeConstant } from '../../src/cooling/index.ts';
import { compareStages, disagreement, gapRatio, nextSteps, verdictOf } from '../../src/gap/index.ts';
import { logInterval } from '../../src/maths/logInterval.ts';
import { say } from '../../src/words/index.ts';

const pooled = (hours: number, logSe: number, degreesOfFreedom: number): PooledTimeConstant => ({
  timeConstant: logInterval(hours * 3600, logSe),
  logSe,
  degreesOfFreedom,
  betweenNights: 0.05,
  nights: degreesOfFreedom + 1,
  meanDifference: 12,
});

describe('the verdict', () => {
  const ratio = (low: number, high: number) => ({ value: (low + high) / 2, low, high });
  test.each([
    [0.7, 1.1, 'meets'],
    [0.95, 1.15, 'meets'],
    [0.95, 1.16, 'undecided'],
    [1.01, 1.4, 'exceeds'],
    [0.5, 0.6, 'meets'],
  ])('a ratio between %f and %f: %s', (low, high, verdict) => {
    expect(verdictOf(ratio(low, high))).toBe(verdict);
  });

  test('an allowance of the house moves only the upper bound', () => {
    expect(verdictOf(ratio(0.95, 1.25), 0.3)).toBe('meets');
    expect(verdictOf(ratio(1.05, 1.25), 0)).toBe('exceeds');
  });

  test('is the same whatever unit both are measured in', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (value, scale) => {
          const measured = logInterval(value, 0.1);
          const scaled = logInterval(value * scale, 0.1);
          expect(gapRatio(scaled, 120 * scale).high).toBeCloseTo(gapRatio(measured, 120).high, 9);
        },
      ),
    );
  });
});

describe('two stages compared', () => {
  const anyPool = fc
    .tuple(
      fc.double({ min: 5, max: 200, noNaN: true }),
      fc.double({ min: 0.005, max: 0.2, noNaN: true }),
      fc.integer({ min: 1, max: 30 }),
    )
    .map(([hours, logSe, freedom]) => pooled(hours, logSe, freedom));

  test('swapping them turns the ratio and its interval over', () => {
    fc.assert(
      fc.property(anyPool, anyPool, (a, b) => {
        const there = compareStages(a, b).heatLossRatio;
        const back = compareStages(b, a).heatLossRatio;
        expect(there.value * back.value).toBeCloseTo(1, 9);
        expect(there.low * back.high).toBeCloseTo(1, 9);
      }),
    );
  });

  test('a stage against itself gives 1, inside its interval', () => {
    const same = compareStages(pooled(40, 0.03, 6), pooled(40, 0.03, 6)).heatLossRatio;
    expect(same.value).toBe(1);
    expect(same.low).toBeLessThan(1);
    expect(same.high).toBeGreaterThan(1);
  });

  test('a longer time constant after means less heat lost', () => {
    expect(compareStages(pooled(40, 0.01, 9), pooled(50, 0.01, 9)).heatLossRatio.value).toBeCloseTo(0.8, 9);
  });
});

describe('two estimates of one heat loss', () => {
  const estimate = (method: 'heat-balance' | 'capacity-over-tau', value: number) => ({
    method,
    tier: method === 'heat-balance' ? ('metered' as const) : ('loggers' as const),
    heatLossCoefficient: logInterval(value, 0.1),
    notes: [],
  });

  test('whose intervals meet agree', () => {
    expect(disagreement([estimate('heat-balance', 100), estimate('capacity-over-tau', 130)])).toBeNull();
  });

  test('whose intervals do not meet contradict each other, as when a plug was taken for all the heat', () => {
    const pair = disagreement([estimate('heat-balance', 5), estimate('capacity-over-tau', 130)]);
    expect(pair?.map(({ method }) => method)).toEqual(['heat-balance', 'capacity-over-tau']);
  });
});

describe('what to do next', () => {
  test('undecided from loggers alone with enough nights asks for one heated night, not for more nights', () => {
    expect(nextSteps({ tier: 'loggers', verdict: 'undecided', goodNights: 9 }, true)).toEqual([
      { code: 'next-heated-night', nightsHelp: false },
    ]);
  });

  test('with two nights more nights come first', () => {
    const codes = nextSteps({ tier: 'loggers', verdict: 'undecided', goodNights: 2 }, true).map(
      ({ code }) => code,
    );
    expect(codes).toEqual(['next-more-nights', 'next-heated-night']);
  });

  test.each(['heated-night', 'metered'] as const)('undecided from a %s asks for metered days', (tier) => {
    expect(nextSteps({ tier, verdict: 'undecided', goodNights: 9 }, true)).toEqual([
      { code: 'next-metered-week' },
    ]);
  });

  test('of many nights it is said that more of them settle nothing, of few it is not', () => {
    expect(say({ code: 'next-heated-night', nightsHelp: false }).text).toContain(
      'More nights will not settle it',
    );
    expect(say({ code: 'next-heated-night', nightsHelp: true }).text).not.toContain('More nights');
  });

  test('with good nights but no heat capacity the capacity is asked for, not colder weather', () => {
    expect(nextSteps({ tier: 'none', verdict: null, goodNights: 4 }, true)).toEqual([
      { code: 'next-give-capacity' },
    ]);
  });

  test('without a single good night colder weather is asked for', () => {
    expect(nextSteps({ tier: 'none', verdict: null, goodNights: 0 }, true)).toEqual([
      { code: 'next-wait-for-cold', needed: 3 },
    ]);
  });

  test('without a design the design is asked for', () => {
    expect(nextSteps({ tier: 'none', verdict: null, goodNights: 3 }, false)).toEqual([
      { code: 'next-give-design' },
    ]);
  });
});
