import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airChangesOf } from '../../../src/gap/change/airChanges.ts';
import { heatLossDifference } from '../../../src/gap/change/difference.ts';
import { logInterval } from '../../../src/maths/logInterval.ts';

const inverse = ({ value, low, high }: { value: number; low: number; high: number }) => ({
  value: 1 / value,
  low: 1 / high,
  high: 1 / low,
});
const sharp = 1e-6;

describe('the difference of two stages in W/K', () => {
  const anyRatio = fc
    .tuple(fc.double({ min: 0.4, max: 2.5, noNaN: true }), fc.double({ min: 0.02, max: 0.3, noNaN: true }))
    .map(([value, sd]) => logInterval(value, sd));
  const anyLoss = fc
    .tuple(fc.double({ min: 20, max: 500, noNaN: true }), fc.double({ min: 0.03, max: 0.4, noNaN: true }))
    .map(([value, sd]) => logInterval(value, sd));
  const sides = fc
    .tuple(fc.option(anyLoss), fc.option(anyLoss))
    .filter(([before, after]) => before !== null || after !== null);

  test('of 100 and 80 W/K is −20, and as unsure as the ratio when the level is sure', () => {
    const it = heatLossDifference(logInterval(0.8, 0.05), logInterval(100, sharp), logInterval(80, sharp));
    expect(it?.value).toBeCloseTo(-20, 9);
    // COMPUTED: √8000·(√r − 1/√r) at the ends of the ratio, 0.8·exp(∓1.96·0.05) = 0.7253 and 0.8824
    expect(it?.low).toBeCloseTo(-28.85, 1);
    expect(it?.high).toBeCloseTo(-11.2, 1);
  });

  test('is as unsure as the level when the ratio is sure: both stages are off together', () => {
    const it = heatLossDifference(logInterval(0.8, sharp), logInterval(100, 0.1), logInterval(80, 0.1));
    // COMPUTED: −20·exp(±1.96·0.1); two intervals apart would give ±25
    // The level is gone through at 200 places, which lie 1 % apart at its ends.
    expect(Math.abs((it?.low ?? 0) / -24.33 - 1)).toBeLessThan(0.01);
    expect(Math.abs((it?.high ?? 0) / -16.44 - 1)).toBeLessThan(0.01);
  });

  test('with the figure of one stage alone is that figure times the ratio less 1', () => {
    const before = heatLossDifference(logInterval(0.9, 0.05), logInterval(120, 0.1), null);
    expect(before?.value).toBeCloseTo(-12, 9); // COMPUTED: 120·(0.9 − 1)
    const after = heatLossDifference(logInterval(0.9, 0.05), null, logInterval(108, 0.1));
    expect(after?.value).toBeCloseTo(-12, 9); // COMPUTED: 108·(1 − 1/0.9)
    expect(heatLossDifference(logInterval(0.9, 0.05), null, null)).toBeNull();
  });

  test('swapping the stages turns its sign and its interval over', () => {
    fc.assert(
      fc.property(anyRatio, sides, (ratio, [before, after]) => {
        const there = heatLossDifference(ratio, before, after);
        const back = heatLossDifference(inverse(ratio), after, before);
        const size = 1e-6 * Math.max(...[there?.low ?? Number.NaN, there?.high ?? Number.NaN].map(Math.abs));
        expect(Math.abs((there?.value ?? Number.NaN) + (back?.value ?? 0))).toBeLessThan(size);
        expect(Math.abs((there?.low ?? Number.NaN) + (back?.high ?? 0))).toBeLessThan(size);
        expect(Math.abs((there?.high ?? Number.NaN) + (back?.low ?? 0))).toBeLessThan(size);
      }),
    );
  });

  test('is clear of 0 exactly when the ratio is clear of 1', () => {
    fc.assert(
      fc.property(anyRatio, sides, (ratio, [before, after]) => {
        fc.pre(Math.abs(ratio.low - 1) > 1e-6 && Math.abs(ratio.high - 1) > 1e-6);
        const it = heatLossDifference(ratio, before, after);
        expect((it?.low ?? Number.NaN) > 0).toBe(ratio.low > 1);
        expect((it?.high ?? Number.NaN) < 0).toBe(ratio.high < 1);
      }),
    );
  });

  test('of a house twice the size is twice as large', () => {
    fc.assert(
      fc.property(anyRatio, anyLoss, (ratio, loss) => {
        const twice = { value: 2 * loss.value, low: 2 * loss.low, high: 2 * loss.high };
        const [one, two] = [loss, twice].map((it) => heatLossDifference(ratio, it, null));
        expect((two?.low ?? Number.NaN) / (one?.low ?? 0)).toBeCloseTo(2, 6);
        expect((two?.value ?? Number.NaN) / 2).toBeCloseTo(one?.value ?? 0, 9);
      }),
    );
  });

  test('of a stage against itself is 0, in the middle of its interval', () => {
    const same = heatLossDifference(logInterval(1, 0.05), logInterval(100, 0.1), logInterval(100, 0.1));
    expect(same?.value).toBe(0);
    expect(same?.low).toBeCloseTo(-(same?.high ?? 0), 6);
  });
});

describe('a difference as air', () => {
  const difference = { value: -20, low: -30, high: -10 };
  const [before, after] = [logInterval(100, 0.05), logInterval(80, 0.05)];

  test('20 W/K less in 240 m³ are a quarter of an air change less', () => {
    const { airChangesPerHour: it, cut } = airChangesOf(difference, { before, after }, 50, 240);
    expect(it?.value).toBeCloseTo(-0.2525, 4); // COMPUTED: 20/(0.33·240)
    expect(cut).toBe(false);
  });

  test('is cut at what the leakier stage could hold beside its fabric as drawn', () => {
    const { airChangesPerHour: it, cut } = airChangesOf(difference, { before, after }, 85, 240);
    expect(cut).toBe(true);
    // COMPUTED: (100·exp(1.96·0.05) − 85)/(0.33·240) = 0.3198
    expect(it?.low).toBeCloseTo(-0.3198, 3);
    expect(it?.high).toBeCloseTo(-0.1263, 3);
  });

  test('there is none where the fabric as drawn alone loses more than was measured', () => {
    expect(airChangesOf(difference, { before, after }, 200, 240)).toEqual({
      airChangesPerHour: null,
      cut: true,
    });
  });
});
