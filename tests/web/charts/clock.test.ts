import { describe, expect, test } from 'vitest';
import { clock, clockOffset, dayAndClock, shortDate } from '../../../src/sheet/drawing/clock.ts';
import { timeTicks } from '../../../web/charts/timeTicks.ts';

const utc = (text: string) => Date.parse(`${text}Z`) / 1000;
const HOUR = 3600;

describe('clock', () => {
  test('midnight is 00:00, never 24:00', () => {
    expect(clock(utc('2027-02-12T00:00'), 'Europe/London')).toBe('00:00');
  });

  test('the same instant stands on the clock of the house, wherever it is read', () => {
    const instant = utc('2027-07-12T22:30');
    expect(dayAndClock(instant, 'Europe/London')).toBe('12 Jul 23:30');
    expect(dayAndClock(instant, 'Asia/Kolkata')).toBe('13 Jul 04:00');
    expect(clockOffset(instant, 'Asia/Kolkata')).toBe(5.5 * HOUR);
  });

  test('a date is that day in every zone', () => {
    expect(shortDate('2027-02-12')).toBe('12 Feb');
  });
});

describe('timeTicks', () => {
  const labels = (from: string, to: string, width: number, timeZone: string) =>
    timeTicks(utc(from), utc(to), width, timeZone).map(({ label }) => label);

  test('hours are marked at full hours of the house, the date under the first and under midnight', () => {
    expect(labels('2027-02-12T20:30', '2027-02-13T02:30', 400, 'Europe/London')).toEqual([
      '21:00\n12 Feb',
      '22:00',
      '23:00',
      '00:00\n13 Feb',
      '01:00',
      '02:00',
    ]);
  });

  test('in the night of the spring change the missing hour is not marked', () => {
    // READ: IANA time zone database, Europe/London: 2027-03-28 01:00 UTC clocks go from 01:00 to 02:00
    const ticks = labels('2027-03-27T22:00', '2027-03-28T04:00', 500, 'Europe/London');
    expect(ticks).toEqual(['22:00\n27 Mar', '23:00', '00:00\n28 Mar', '02:00', '03:00', '04:00', '05:00']);
  });

  test('in the night of the autumn change the doubled hour is marked twice, an hour apart', () => {
    // READ: IANA time zone database, Europe/London: 2027-10-31 01:00 UTC clocks go from 02:00 to 01:00
    const ticks = timeTicks(utc('2027-10-30T22:00'), utc('2027-10-31T04:00'), 500, 'Europe/London');
    expect(ticks.map(({ label }) => label.split('\n')[0])).toEqual([
      '23:00',
      '00:00',
      '01:00',
      '01:00',
      '02:00',
      '03:00',
      '04:00',
    ]);
    const hours = ticks.slice(1).map(({ at }, i) => (at - ticks[i].at) / HOUR);
    expect(new Set(hours)).toEqual(new Set([1]));
  });

  test('days are marked at the house’s midnights on both sides of a clock change', () => {
    const ticks = timeTicks(utc('2027-03-25T12:00'), utc('2027-03-31T12:00'), 600, 'Europe/London');
    expect(
      ticks.map(({ at }) => clock(at, 'Europe/London')).filter((it) => it !== '00:00' && it !== '12:00'),
    ).toEqual([]);
    const daily = timeTicks(utc('2027-03-25T12:00'), utc('2027-03-31T12:00'), 330, 'Europe/London');
    expect(daily.map(({ label }) => label)).toEqual([
      '26 Mar',
      '27 Mar',
      '28 Mar',
      '29 Mar',
      '30 Mar',
      '31 Mar',
    ]);
  });

  test('a year is marked by months, with the year under the first and under January', () => {
    const ticks = labels('2026-09-15T00:00', '2027-09-14T00:00', 1000, 'Europe/London');
    expect(ticks).toHaveLength(12);
    expect(ticks[0]).toBe('Oct\n2026');
    expect(ticks[3]).toBe('Jan\n2027');
  });

  test.each([328, 720, 1400])('no two marks stand nearer than a label is wide on %i px', (width) => {
    for (const span of [1, 5, 24, 70, 24 * 9, 24 * 35, 24 * 180, 24 * 365, 24 * 1500]) {
      const from = utc('2027-02-03T07:13');
      const to = from + span * HOUR;
      const ticks = timeTicks(from, to, width, 'America/New_York');
      const apart = ticks.slice(1).map(({ at }, i) => ((at - ticks[i].at) / (to - from)) * width);
      expect(Math.min(Infinity, ...apart)).toBeGreaterThan(45);
      expect(ticks.every(({ at }) => at >= from && at <= to)).toBe(true);
    }
  });
});
