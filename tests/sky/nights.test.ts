import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nightsBetween } from '../../src/sky/nights.ts';
import { sunTimes } from '../../src/sky/sunTimes.ts';
import { instantOf } from '../../src/sky/zone.ts';

const london = { latitude: 51.5, longitude: -0.13, timeZone: 'Europe/London' };
const auckland = { latitude: -36.85, longitude: 174.76, timeZone: 'Pacific/Auckland' };
const tromso = { latitude: 69.65, longitude: 18.96, timeZone: 'Europe/Oslo' };

const nights = (from: string, to: string, place: typeof london) =>
  nightsBetween(instantOf(from, place.timeZone), instantOf(to, place.timeZone), place);
const dates = (from: string, to: string, place: typeof london) =>
  nights(from, to, place).map(({ date }) => date);

describe('the nights of a record', () => {
  test('carry the date of their evening', () => {
    expect(dates('2027-01-09T21:00', '2027-01-10T03:00', london)).toEqual(['2027-01-09']);
    expect(dates('2027-01-10T02:00', '2027-01-10T03:00', london)).toEqual(['2027-01-09']);
    expect(dates('2027-01-09T21:00', '2027-01-10T03:00', auckland)).toEqual(['2027-01-09']);
  });

  test('run from the sunset of one date to the sunrise of the next', () => {
    const [night] = nights('2027-01-09T21:00', '2027-01-10T03:00', london);
    expect(night.sunset).toBeCloseTo(sunTimes('2027-01-09', london).sunset ?? Number.NaN, 0);
    expect(night.sunrise).toBeCloseTo(sunTimes('2027-01-10', london).sunrise ?? Number.NaN, 0);
    expect(night.noon).toBeLessThan(night.sunset);
  });

  test('are none within one daytime', () => {
    expect(dates('2027-06-09T09:00', '2027-06-09T17:00', london)).toEqual([]);
  });

  test('are 365 in a year, one for each date, over both clock changes', () => {
    for (const place of [london, auckland]) {
      const all = dates('2026-01-01T12:30', '2027-01-01T11:30', place);
      expect(all).toHaveLength(365);
      expect(new Set(all).size).toBe(365);
      expect(all[0]).toBe('2026-01-01');
      expect(all[364]).toBe('2026-12-31');
    }
  });

  test('include those that the record only touches, and no others', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1_700_000_000, max: 1_900_000_000 }),
        fc.integer({ min: 0, max: 10 * 86_400 }),
        fc.constantFrom(london, auckland),
        (first, length, place) => {
          const last = first + length;
          const found = nightsBetween(first, last, place);
          const around = nightsBetween(first - 5 * 86_400, last + 5 * 86_400, place);
          const touching = around.filter(({ sunset, sunrise }) => sunset <= last && sunrise >= first);
          expect(found.map(({ date }) => date)).toEqual(touching.map(({ date }) => date));
        },
      ),
    );
  });

  test('come one after the other without overlap', () => {
    const all = nights('2026-01-01', '2027-01-01', london);
    all.slice(1).forEach(({ noon, sunset }, i) => {
      expect(all[i].sunrise).toBeLessThan(noon);
      expect(noon).toBeLessThan(sunset);
    });
  });
});

test('where the sun does not set, or does not rise, there is no night', () => {
  expect(dates('2026-06-10', '2026-06-20', tromso)).toEqual([]);
  expect(dates('2026-12-10', '2026-12-20', tromso)).toEqual([]);
  expect(dates('2026-03-10T12:00', '2026-03-12T12:00', tromso)).toEqual(['2026-03-10', '2026-03-11']);
});
