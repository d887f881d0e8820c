/** The least change that two stages could show, tried on simulated pairs. */
import { describe, expect, test } from 'vitest';
import type { PooledTimeConstant } from '../../../src/cooling/index.ts';
import {
  jointDoubt,
  jointDoubtWith,
  nightsToShow,
  plainDoubt,
  plainDoubtWith,
  smallestChange,
} from '../../../src/gap/change/detectable.ts';
import { compareStages } from '../../../src/gap/index.ts';
import { logInterval } from '../../../src/maths/logInterval.ts';
import { poolRandomEffects } from '../../../src/maths/pooling.ts';
import { type Random, random } from '../../proving/random.ts';

const pooled = (logSe: number, nights: number): PooledTimeConstant => ({
  timeConstant: logInterval(40 * 3600, logSe),
  logSe,
  degreesOfFreedom: nights - 1,
  betweenNights: 0.05,
  nights,
  meanDifference: 12,
});

/** A stage of nights whose logarithms scatter by 0.06 in all, each known to 0.03 by itself. */
const OWN = 0.03;
const SCATTER = 0.06;
function stageOf(logTimeConstant: number, nights: number, draws: Random): PooledTimeConstant {
  const logs = Array.from({ length: nights }, () => logTimeConstant + SCATTER * draws.normal());
  const them = poolRandomEffects(
    logs,
    logs.map(() => OWN ** 2),
  );
  if (them.kind === 'not pooled') throw new Error(them.reason);
  return { ...pooled(them.se, nights), timeConstant: logInterval(Math.exp(them.mean), them.se) };
}

/**
 * The share of pairs whose interval leaves out 1. One time constant does not follow the heat loss quite, by what
 * `compareStages` says of it: that is part of the simulated houses as well.
 */
function shownOf(change: number, nights: number, pairs: number, name: string): number {
  const draws = random(7, name);
  const log = -Math.log(1 - change);
  let shown = 0;
  for (let i = 0; i < pairs; i++) {
    const form = (0.02 + 0.15 * log) * draws.normal();
    const before = stageOf(Math.log(40), nights, draws);
    const after = stageOf(Math.log(40) + log + form, nights, draws);
    const { low, high } = compareStages(before, after).heatLossRatio;
    if (low > 1 || high < 1) shown++;
  }
  return shown / pairs;
}

describe('the smallest change', () => {
  const PAIRS = 800;
  const planned = (nights: number) =>
    smallestChange(plainDoubtWith(...twice(pooled(SCATTER / Math.sqrt(nights), nights)))(nights));

  test.each([6, 12, 25])('with %i nights on each side is shown by about four pairs of five', (nights) => {
    const share = shownOf(planned(nights), nights, PAIRS, `shown ${nights}`);
    // Three standard deviations of a binomial.
    const chance = 3 * Math.sqrt((0.8 * 0.2) / PAIRS);
    expect(share).toBeGreaterThan(0.8 - chance);
    expect(share).toBeLessThan(0.8 + chance);
  });

  test('half of it is shown by far fewer, and no change at all by one in twenty', () => {
    expect(shownOf(planned(12) / 2, 12, PAIRS, 'half')).toBeLessThan(0.5);
    expect(shownOf(0, 12, PAIRS, 'none')).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / PAIRS));
  });

  test('is 2.8 standard errors of the logarithm where the doubt is the same for any change', () => {
    expect(smallestChange(() => 0.05)).toBeCloseTo(1 - Math.exp(-2.8 * 0.05), 5); // COMPUTED
  });

  test('of a joint ratio with nights without number is 12 %', () => {
    // COMPUTED: told from 1.96·0.045/√(1 − 0.196²) = 0.08995 on; d = 0.08995 + 0.84·√(0.045² + 0.01·d²) = 0.1293
    expect(smallestChange(jointDoubt(logInterval(1, 0.045)))).toBeCloseTo(1 - Math.exp(-0.1293), 4);
  });

  test('of a joint ratio is the same whatever change was met with it', () => {
    const own = 0.03;
    const met = (log: number) =>
      smallestChange(jointDoubt(logInterval(Math.exp(log), Math.hypot(own, 0.045, 0.1 * log))));
    expect(met(-0.4)).toBeCloseTo(met(0), 9);
  });

  test('of two stages is the same whichever comes first', () => {
    const [a, b] = [pooled(0.03, 9), pooled(0.05, 5)];
    expect(smallestChange(plainDoubt(a, b))).toBeCloseTo(smallestChange(plainDoubt(b, a)), 12);
  });
});

describe('the nights that show a change', () => {
  const of = (logSe: number, nights: number) => nightsToShow(plainDoubtWith(...twice(pooled(logSe, nights))));

  test('are the fewest with which it is the smallest change', () => {
    const with20 = of(0.02, 9).find(({ change }) => change === 0.2)?.nights ?? Number.NaN;
    const least = (nights: number) => smallestChange(plainDoubtWith(...twice(pooled(0.02, 9)))(nights));
    expect(least(with20)).toBeLessThanOrEqual(0.2);
    expect(least(with20 - 1)).toBeGreaterThan(0.2);
  });

  test('are none for 5 %, since more nights do not mend what the method itself may be off by', () => {
    expect(of(0.001, 50)[0]).toEqual({ change: 0.05, nights: null });
  });

  test('are more where the nights scatter more', () => {
    const [calm, wild] = [of(0.01, 9), of(0.03, 9)].map((plan) => plan[2].nights ?? Number.NaN);
    expect(wild).toBeGreaterThan(calm);
  });

  test('by one network for both stages: none for 10 %, some for 20 %', () => {
    const ratio = logInterval(0.9, 0.06);
    const plan = nightsToShow(jointDoubtWith(ratio, pooled(0.04, 14), pooled(0.04, 14)));
    expect(plan.map(({ nights }) => nights === null)).toEqual([true, true, false]);
  });
});

function twice(it: PooledTimeConstant): [PooledTimeConstant, PooledTimeConstant] {
  return [it, it];
}
