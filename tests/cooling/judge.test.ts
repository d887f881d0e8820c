import { describe, expect, test } from 'vitest';
import { judgeNights } from '../../src/cooling/index.ts';
import { timeAt } from '../../src/series/grid.ts';
import { HOUR, midnight, nightsOf, recordOf, type Shape } from './nightsAtHand.ts';

const judge = (shape: Shape = {}) => {
  const record = recordOf(shape);
  return judgeNights(record, nightsOf(record));
};
const codes = (shape: Shape) => judge(shape)[0].reasons.map(({ code }) => code);
const inFirstNight = (from: number, to: number) => (t: number) =>
  t >= midnight + from * HOUR && t <= midnight + to * HOUR;

describe('the cooling window', () => {
  const record = recordOf();
  const [first] = judgeNights(record, nightsOf(record));

  test('begins an hour and a half after the heating went off, because air and linings cool first', () => {
    // 0.1 K below 20 °C is reached after 0.27 h at 15 K over 40 h: the last cell within it is 20:10.
    expect(first.window && timeAt(record.grid, first.window.first)).toBe(midnight + 21 * HOUR + 40 * 60);
  });

  test('ends ten minutes before the lowest point, when morning heating begins', () => {
    expect(first.window && timeAt(record.grid, first.window.last)).toBe(midnight + 31 * HOUR - 20 * 60);
  });
});

describe('a night', () => {
  test('that cools freely is used, and its time constant found', () => {
    const nights = judge();
    expect(nights.map(({ used }) => used)).toEqual([true, true, true]);
    for (const { fit } of nights) {
      expect(fit?.kind).toBe('fitted');
      // No noise and a constant outdoor temperature: the exponential is exact.
      if (fit?.kind === 'fitted') expect(fit.timeConstant.value / HOUR).toBeCloseTo(40, 3);
    }
  });

  test('with two hours of readings missing is judged but not pooled', () => {
    const gap = inFirstNight(25, 27);
    const [night] = judge({ inside: (t, it) => (gap(t) ? Number.NaN : it) });
    expect(night.used).toBe(false);
    expect(night.fit?.kind).toBe('fitted');
    expect(night.reasons.map(({ code }) => code)).toEqual(['gap-inside']);
  });

  test('only 2 K colder outside than inside is left out for want of a difference', () => {
    expect(codes({ outside: () => 18 })).toContain('difference-too-small');
  });

  test('in which the heating came on for an hour counts from then on, and is too short', () => {
    const heating = inFirstNight(26, 27);
    expect(codes({ inside: (t, it) => (heating(t) ? it + 1 : it) })).toEqual(['too-short']);
  });

  test('with a metered heater counts as heated and is left out of the free ones', () => {
    const heating = inFirstNight(18, 23);
    const [first, second] = judge({ heatingPower: (t) => (heating(t) ? 3000 : 0) });
    expect([first.heated, first.used]).toEqual([true, false]);
    expect(first.reasons).toEqual([{ code: 'heater-on', energy: expect.closeTo(15.5 * 3.6e6, -6) }]);
    expect([second.heated, second.used]).toEqual([false, true]);
  });

  test('after an evening heated as every other is free, though its heat is metered', () => {
    const record = recordOf({
      days: 5,
      heatingPower: (t) =>
        ((t - midnight) / HOUR) % 24 >= 7 && ((t - midnight) / HOUR) % 24 < 20 ? 1500 : 0,
    });
    const nights = judgeNights(record, nightsOf(record)).slice(0, 4);
    expect(nights.map(({ heated, used }) => [heated, used])).toEqual(Array(4).fill([true, true]));
  });

  test('with a hole at the edge of its window still has a drop', () => {
    const hole = inFirstNight(21.6, 22);
    const [night] = judge({ inside: (t, it) => (hole(t) ? Number.NaN : it) });
    expect(night.drop).toBeGreaterThan(2);
  });

  test('without outdoor readings is left out and says so', () => {
    const night = inFirstNight(14, 33);
    const falling = (t: number) => 20 - Math.max(0, (t - midnight) / HOUR - 20) / 5;
    const judged = judge({ days: 1, outside: (t) => (night(t) ? Number.NaN : 5), inside: falling });
    expect(judged[0].reasons).toEqual([{ code: 'no-outside-readings' }]);
    expect(judged[0].used).toBe(false);
  });

  test('kept warm until the morning did not cool freely', () => {
    expect(codes({ inside: () => 20 })).toEqual(['no-cooling-window']);
  });

  test('that falls by less than two steps of a coarse logger is left out', () => {
    const falling = (t: number) => 20 - 0.09 * Math.max(0, (t - midnight) / HOUR - 16);
    expect(codes({ days: 1, inside: falling, resolution: 0.5 })).toContain('barely-fell');
  });

  test('of three hours between late heating and sunrise is too short', () => {
    const late = inFirstNight(12, 28);
    const [night] = judge({ inside: (t, it) => (late(t) ? 20 : it) });
    expect(night.used).toBe(false);
  });

  test('left out by hand is not used, whatever it looks like, and keeps its fit', () => {
    const record = recordOf();
    const nights = nightsOf(record);
    const [night] = judgeNights(record, nights, [{ date: nights[0].date, used: false, why: 'hatch open' }]);
    expect(night.used).toBe(false);
    expect(night.fit?.kind).toBe('fitted');
    expect(night.reasons).toEqual([{ code: 'left-out-by-hand', why: 'hatch open' }]);
  });
});
