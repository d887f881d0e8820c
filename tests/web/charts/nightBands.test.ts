import { describe, expect, test } from 'vitest';
import type { NightResult } from '../../../src/assessment.ts';
import type { NightCurve } from '../../../src/curves.ts';
import {
  bandPitch,
  heightOf,
  nightBand,
  pixelsPerHour,
  rowScale,
} from '../../../src/sheet/drawing/nightBands.ts';

const SUNSET = Date.UTC(2027, 1, 12, 17) / 1000;
const HOUR = 3600;

/** Fourteen hours from sunset to sunrise, one reading an hour from an hour before to an hour after. */
const curve: NightCurve = {
  date: '2027-02-12',
  sunset: SUNSET,
  sunrise: SUNSET + 14 * HOUR,
  time: Array.from({ length: 17 }, (_, i) => SUNSET + (i - 1) * HOUR),
  inside: Array.from({ length: 17 }, (_, i) => 20 - i / 4),
  outside: Array.from({ length: 17 }, () => 4),
  fitted: Array.from({ length: 17 }, () => null),
  window: { from: SUNSET + 4 * HOUR, to: SUNSET + 12 * HOUR },
};
const night: NightResult = {
  date: '2027-02-12',
  from: null,
  to: null,
  used: true,
  heated: false,
  reasons: [],
  dropK: 2,
  rateKPerH: 0.25,
  meanDifferenceK: 13,
  timeConstantH: 52,
  timeConstantSeH: 3,
};
const scale = rowScale([curve], 200);

describe('rowScale', () => {
  test('all readings of the row lie on it, the warmest above the coldest', () => {
    // outside 4, inside from 20 down to 16: one degree is left free above and below
    expect([scale.low, scale.high]).toEqual([3, 21]);
    expect(heightOf(scale, 21)).toBe(0);
    expect(heightOf(scale, 3)).toBe(200);
    expect(heightOf(scale, 12)).toBe(100);
  });

  test('it is marked every five degrees, and every ten when the row spans more than thirty-two', () => {
    expect(scale.ticks).toEqual([5, 10, 15, 20]);
    const frosty = { ...curve, outside: curve.outside.map(() => -18) };
    expect(rowScale([frosty], 200).ticks).toEqual([-10, 0, 10, 20]);
  });

  test('a row without a single reading still has a scale', () => {
    const empty = { ...curve, inside: curve.inside.map(() => null), outside: curve.outside.map(() => null) };
    expect(rowScale([empty], 200)).toMatchObject({ low: 0, high: 20 });
  });
});

describe('the widths', () => {
  test('as many whole nights as fit stand in the row', () => {
    expect(bandPitch(328, 33)).toBeCloseTo(328 / 5, 12);
    expect(bandPitch(1074, 33)).toBeCloseTo(1074 / 16, 12);
  });

  test('a row that is not laid out yet has bands, if narrow ones', () => {
    expect(bandPitch(3, 33)).toBe(64);
  });

  test('a northern summer night has a band beside the longest of winter', () => {
    const perHour = pixelsPerHour([curve], 70);
    expect(nightBand({ ...curve, sunrise: curve.sunset + 60 }, night, scale, perHour).width).toBe(2);
  });

  test('few nights are not stretched beyond the widest band', () => {
    expect(bandPitch(1074, 2)).toBe(104);
  });

  test('a night of half the length is half as wide: one scale of time for all', () => {
    const short = { ...curve, sunrise: SUNSET + 7 * HOUR };
    const perHour = pixelsPerHour([curve, short], 70);
    expect(nightBand(curve, night, scale, perHour).width).toBeCloseTo(70, 9);
    expect(nightBand(short, night, scale, perHour).width).toBeCloseTo(35, 9);
  });
});

describe('nightBand', () => {
  test('sunset is the left edge and sunrise the right; what lies before and after is not drawn', () => {
    const { inside } = nightBand(curve, night, scale, 5);
    expect(inside).toHaveLength(1);
    expect(inside[0][0].x).toBe(0);
    expect(inside[0].at(-1)?.x).toBe(70);
    expect(inside[0][0].y).toBeCloseTo(heightOf(scale, 19.75), 9);
  });

  test('the drop stands in figures at the end of what was fitted', () => {
    const { drop, hollow } = nightBand(curve, night, scale, 5);
    expect(hollow).toBe(false);
    expect(drop?.text).toBe('−2.0 K');
    expect(drop?.at.x).toBe(60);
    expect(drop?.at.y).toBeCloseTo(heightOf(scale, 16.75), 9);
  });

  test('a night left out is hollow, with its first reason on it and no drop', () => {
    const reasons = [
      { code: 'uneven-fall', text: 'the fall is uneven (0.5 K off the curve): something was switched' },
      { code: 'barely-fell', text: 'it fell by only 0.2 K' },
    ];
    const band = nightBand(curve, { ...night, used: false, reasons }, scale, 5);
    expect(band.hollow).toBe(true);
    expect(band.drop).toBeNull();
    expect(band.reason?.lines.join(' ')).toBe('the fall is uneven');
  });

  test('the reason stands in the widest free strip, between the lines', () => {
    const reasons = [{ code: 'x', text: 'left out by hand' }];
    const band = nightBand(curve, { ...night, used: false, reasons }, scale, 5);
    const y = band.reason?.at.y ?? 0;
    expect(y).toBeGreaterThan(heightOf(scale, 16.25));
    expect(y).toBeLessThan(heightOf(scale, 4));
  });

  test('a night of no stage is hollow and says so', () => {
    const band = nightBand(curve, undefined, scale, 5);
    expect(band.hollow).toBe(true);
    expect(band.reason?.lines.join(' ')).toBe('belongs to no stage');
  });

  test('a missing reading cuts the line in two', () => {
    const holed = { ...curve, inside: curve.inside.map((it, i) => (i === 8 ? null : it)) };
    const { inside } = nightBand(holed, night, scale, 5);
    expect(inside).toHaveLength(2);
    expect(inside[0].at(-1)?.x).toBe(30);
    expect(inside[1][0].x).toBe(40);
  });

  test('a reading a minute gives no more points than pixels, and keeps the last', () => {
    const time = Array.from({ length: 14 * 60 + 1 }, (_, i) => SUNSET + i * 60);
    const minutely = { ...curve, time, inside: time.map(() => 18), outside: time.map(() => 4) };
    const { inside } = nightBand(minutely, night, scale, 5);
    expect(inside[0].length).toBeLessThanOrEqual(72);
    expect(inside[0].at(-1)?.x).toBe(70);
  });

  test('a night without any reading has no lines and does not fail', () => {
    const empty = { ...curve, time: [], inside: [], outside: [], fitted: [], window: null };
    const band = nightBand(empty, { ...night, used: false, dropK: null }, scale, 5);
    expect([band.inside, band.outside, band.fall]).toEqual([[], [], []]);
  });
});
