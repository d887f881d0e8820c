import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { poolRandomEffects } from '../../src/maths/pooling.ts';

const pooled = (estimates: readonly number[], variances: readonly number[]) => {
  const it = poolRandomEffects(estimates, variances);
  if (it.kind === 'not pooled') throw new Error(it.reason);
  return it;
};

const estimate = fc.double({ min: -5, max: 5, noNaN: true });
const variance = fc.double({ min: 1e-4, max: 1, noNaN: true });
const nights = fc.array(fc.record({ y: estimate, v: variance }), { minLength: 2, maxLength: 12 });

describe('pooled estimates', () => {
  test('of the same variance: their mean, and the scatter beyond that variance', () => {
    fc.assert(
      fc.property(fc.array(estimate, { minLength: 2, maxLength: 12 }), variance, (estimates, v) => {
        const count = estimates.length;
        const mean = estimates.reduce((sum, it) => sum + it, 0) / count;
        const scatter = estimates.reduce((sum, it) => sum + (it - mean) ** 2, 0) / (count - 1);
        const it = pooled(
          estimates,
          estimates.map(() => v),
        );
        // closed form of REML with equal variances; the halving ends at rounding
        expect(it.mean).toBeCloseTo(mean, 9);
        expect(it.betweenVariance).toBeCloseTo(Math.max(0, scatter - v), 7);
        expect(it.hartungKnappSe).toBeCloseTo(Math.sqrt(scatter / count), 7);
      }),
    );
  });

  test('do not depend on the order of the nights', () => {
    fc.assert(
      fc.property(nights, (some) => {
        const one = pooled(
          some.map(({ y }) => y),
          some.map(({ v }) => v),
        );
        const turned = [...some].reverse();
        const other = pooled(
          turned.map(({ y }) => y),
          turned.map(({ v }) => v),
        );
        // sums in another order: rounding
        expect(other.mean).toBeCloseTo(one.mean, 7);
        expect(other.se).toBeCloseTo(one.se, 7);
      }),
    );
  });

  test('have an interval that holds the mean and is made from the larger error', () => {
    fc.assert(
      fc.property(nights, (some) => {
        const it = pooled(
          some.map(({ y }) => y),
          some.map(({ v }) => v),
        );
        expect(it.se).toBe(Math.max(it.remlSe, it.hartungKnappSe));
        expect(it.interval.low).toBeLessThanOrEqual(it.mean);
        expect(it.interval.high).toBeGreaterThanOrEqual(it.mean);
        expect(it.degreesOfFreedom).toBe(some.length - 1);
      }),
    );
  });

  test('that agree keep the error that their variances give', () => {
    const it = pooled([3, 3, 3, 3], [0.04, 0.04, 0.04, 0.04]);
    expect(it.betweenVariance).toBe(0);
    expect(it.mean).toBe(3);
    expect(it.hartungKnappSe).toBe(0);
    expect(it.se).toBeCloseTo(0.1, 12); // √(0.04/4)
    expect(it.fixedEffect.iSquared).toBe(0);
  });
});

test('one estimate cannot be pooled, nor none', () => {
  expect(poolRandomEffects([3], [0.1])).toEqual({ kind: 'not pooled', reason: 'fewer than two estimates' });
  expect(poolRandomEffects([], [])).toEqual({ kind: 'not pooled', reason: 'fewer than two estimates' });
});

test('a variance of 0, a missing estimate or unequal lengths are mistakes in the call', () => {
  expect(() => poolRandomEffects([1, 2], [0.1, 0])).toThrow(RangeError);
  expect(() => poolRandomEffects([1, Number.NaN], [0.1, 0.1])).toThrow(RangeError);
  expect(() => poolRandomEffects([1, 2], [0.1])).toThrow(RangeError);
});
