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

describe('something that happened in the night is named', () => {
  /** A window open for half an hour: the air falls at once and comes back as the walls warm it. */
  const open = (from: number, depth: number) => (t: number, it: number) => {
    const since = (t - midnight) / HOUR - from;
    if (since < 0 || since > 8) return it;
    const opened = 1 - Math.exp(-Math.min(since, 0.5) / 0.15);
    return it - depth * opened * Math.exp(-Math.max(0, since - 0.5) / 0.4);
  };

  test('a window open for half an hour, unless four good hours lie before it, which then count alone', () => {
    for (const hour of [24, 25, 26, 27, 28, 29])
      for (const depth of [0.8, 1.5, 3]) {
        const record = recordOf({ days: 1, inside: open(hour, depth) });
        const [{ used, reasons, window, fit }] = judgeNights(record, nightsOf(record));
        if (!used) expect(reasons.map(({ code }) => code)).toContain('opened');
        else {
          expect(timeAt(record.grid, window?.last ?? 0)).toBeLessThanOrEqual(midnight + hour * HOUR);
          expect(fit?.kind === 'fitted' && fit.timeConstant.value / HOUR).toBeCloseTo(40, 1);
        }
      }
  });

  test('with the hour, told before sunrise', () => {
    const [night] = judge({ days: 1, inside: open(26, 0.8) });
    const opened = night.reasons.find(({ code }) => code === 'opened');
    if (opened?.code !== 'opened') throw new Error('not found');
    // Opened at 02:00; it may be told one cell early or late.
    const told = night.night.sunrise - opened.beforeSunrise;
    expect(Math.abs(told - (midnight + 26 * HOUR))).toBeLessThanOrEqual(600);
  });

  test('a hatch that stays open until the morning', () => {
    const hatch = (t: number, it: number) => {
      const since = (t - midnight) / HOUR - 25;
      return since < 0 || since > 6 ? it : it - 1.2 * (1 - Math.exp(-since / 0.3)) - 0.3 * since;
    };
    expect(judge({ days: 1, inside: hatch })[0].reasons.map(({ code }) => code)).toContain('opened');
  });

  test('a thermostat that keeps the house from falling on', () => {
    const cycling = (t: number, it: number) => {
      const hour = (t - midnight) / HOUR;
      return hour > 23 && hour < 31 ? 18.4 + 0.3 * Math.sin((2 * Math.PI * hour) / 1.2) : it;
    };
    const [night] = judge({ days: 1, inside: cycling });
    expect(night.used).toBe(false);
    expect(night.reasons.map(({ code }) => code)).toContain('heating-cycled');
  });

  test('a heater in one room', () => {
    const heating = inFirstNight(25, 27);
    const rooms = [
      {
        room: 'Bedroom',
        place: 'inside',
        temperature: (t: number, it: number) => it + (heating(t) ? 1 : 0),
      } as const,
    ];
    expect(judge({ rooms })[0].reasons).toEqual([
      { code: 'room-warmed', room: 'Bedroom', rise: expect.closeTo(0.9, 0) },
    ]);
    expect(judge({ rooms })[1].reasons).toEqual([]);
  });

  test('sun by the weather record, long after sunset by the place: a clock runs wrong', () => {
    const late = inFirstNight(12, 24);
    expect(judge({ irradiance: (t) => (late(t) ? 200 : 0) })[0].reasons).toEqual([
      { code: 'sun-still-on', irradiance: 200 },
    ]);
    expect(judge({ irradiance: () => 3 })[0].used).toBe(true);
  });

  test('an outdoor logger that stood still from noon to sunrise, when on other days it does not', () => {
    const stopped = inFirstNight(12, 33);
    const outside = (t: number) => (stopped(t) ? 6 : 6 + 2 * Math.cos((2 * Math.PI * t) / (24 * HOUR)));
    const nights = judge({ outside });
    expect(nights.map(({ reasons }) => reasons.map(({ code }) => code))).toEqual([
      ['outside-stood-still'],
      [],
      [],
    ]);
  });

  test('an outdoor logger that was carried indoors for a while', () => {
    const indoors = inFirstNight(25, 28);
    const record = recordOf();
    const outsideTemperature = record.outsideTemperature.map((it, i) =>
      indoors(timeAt(record.grid, i)) ? 18 : it,
    );
    const [night] = judgeNights({ ...record, outsideTemperature }, nightsOf(record));
    expect(night.reasons.map(({ code }) => code)).toContain('outside-jumped');
    expect(night.used).toBe(false);
  });
});

describe('a night beside a heated neighbour', () => {
  const besideOf = (temperature: (t: number) => number) => {
    // The house cools towards 9.5 °C: 0.7 of 5 °C outdoors and 0.3 of the neighbour's 20 °C.
    const record = recordOf({
      outside: () => 9.5,
      rooms: [{ room: 'Next door', place: 'adjacent', temperature }],
    });
    return { ...record, outsideTemperature: record.outsideTemperature.map(() => 5) };
  };

  test('is driven by both, each by its share of the losses', () => {
    const record = besideOf(() => 20);
    for (const { used, fit, meanDifference, drivingDifference } of judgeNights(record, nightsOf(record), [], {
      weight: 0.3,
      temperature: null,
    })) {
      expect(used).toBe(true);
      if (fit?.kind === 'fitted') expect(fit.timeConstant.value / HOUR).toBeCloseTo(40, 3);
      expect((meanDifference ?? 0) - (drivingDifference ?? 0)).toBeCloseTo(4.5, 6);
    }
  });

  test('takes the temperature that was stated where no logger lies there', () => {
    const record = { ...besideOf(() => 20), rooms: [] };
    const [{ fit }] = judgeNights(record, nightsOf(record), [], { weight: 0.3, temperature: 20 });
    expect(fit?.kind === 'fitted' && fit.timeConstant.value / HOUR).toBeCloseTo(40, 3);
  });

  test('without the neighbour in it, reads far too slow', () => {
    const record = besideOf(() => 20);
    const [{ fit }] = judgeNights(record, nightsOf(record));
    expect(fit?.kind === 'fitted' && fit.timeConstant.value / HOUR).toBeGreaterThan(50);
  });

  test('is not used when the neighbour’s logger was silent', () => {
    const record = besideOf(() => Number.NaN);
    const nights = judgeNights(record, nightsOf(record), [], { weight: 0.3, temperature: null });
    expect(nights[0].reasons).toEqual([{ code: 'gap-neighbour', missing: expect.any(Number) }]);
  });
});
