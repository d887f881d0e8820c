/** What few nights leave of a figure by effective capacity. */
import { describe, expect, test } from 'vitest';
import { assessRecord } from '../../../src/assess.ts';
import { effectiveSd, nightsTellLittle } from '../../../src/heatloss/network/beyond.ts';
import { meanLogTimeConstantSd } from '../../../src/heatloss/network/fittedNights.ts';
import { proved } from '../../proving/judging/told.ts';

const HOUR = 3600;
const nightsOf = (...hours: readonly number[]) =>
  hours.map((it) => ({ first: 0, last: 1, stage: 0, timeConstant: it * HOUR }));
const rest = { capacity: 0.15, loggers: 0.01, gains: 0.02 };

describe('the mean of the nights’ time constants', () => {
  test('of 55 and 236 hours is known to a factor of some thousands: t with one degree of freedom is 12.7', () => {
    // COMPUTED: sd = ln(236/55)/√2 = 1.0299, over √2 = 0.7282, times 12.706/1.960 (Student's table) = 4.721
    expect(meanLogTimeConstantSd(nightsOf(55, 236), 0)).toBeCloseTo(4.721, 2);
  });

  test('of ten nights alike is surer than what else effective capacity rests on', () => {
    const nights = meanLogTimeConstantSd(nightsOf(50, 55, 52, 48, 53, 51, 47, 54, 49, 52), 0) ?? 1;
    expect(nights).toBeLessThan(0.05);
    expect(nightsTellLittle({ ...rest, nights }, false)).toBe(false);
    // ten good nights widen by less than a twentieth
    expect(effectiveSd({ ...rest, nights }, false) / effectiveSd({ ...rest, nights: 0 }, false)).toBeLessThan(
      1.05,
    );
  });

  test('of two nights that differ tells less than all else, and one night has no spread', () => {
    const nights = meanLogTimeConstantSd(nightsOf(55, 236), 0) ?? 0;
    expect(nightsTellLittle({ ...rest, nights }, false)).toBe(true);
    expect(meanLogTimeConstantSd(nightsOf(55), 0)).toBeNull();
  });
});

describe('a record of few nights', () => {
  const { house, record } = proved('timber cabin', 'loggers, layers known');
  const { nights } = assessRecord(house, record);
  const used = nights.filter((it) => it.used).map(({ night }) => night.date);
  const methodsWith = (count: number) => {
    const byHand = used.slice(count).map((date) => ({ date, used: false }));
    const [stage] = assessRecord({ ...house, stages: undefined, nights: byHand }, record).stages;
    expect(stage.stage.nights.filter((it) => it.used)).toHaveLength(count);
    return stage.estimates.map(({ method, heatLossCoefficient: { low, high } }) => ({
      method,
      factor: high / low,
    }));
  };

  test('gives no figure by effective capacity from one night, and a wider one from three than from all', () => {
    const of = (count: number) => methodsWith(count).find(({ method }) => method === 'effective-capacity');
    const [all, three, one] = [used.length, 3, 1].map(of);
    expect(one).toBeUndefined();
    expect(three?.factor ?? 0).toBeGreaterThan(all?.factor ?? Number.POSITIVE_INFINITY);
  });
});
