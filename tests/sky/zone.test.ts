import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instantOf, isoWithOffset, localDate } from '../../src/sky/zone.ts';

const utc = (text: string) => Date.parse(text) / 1000;

describe('a local time', () => {
  test('is an instant by the offset of that day', () => {
    expect(instantOf('2027-01-09T21:00', 'Europe/London')).toBe(utc('2027-01-09T21:00:00Z'));
    expect(instantOf('2027-07-09T21:00:30', 'Europe/London')).toBe(utc('2027-07-09T20:00:30Z'));
  });

  test('without a clock is the midnight that begins the date', () => {
    expect(instantOf('2027-07-09', 'Europe/London')).toBe(utc('2027-07-08T23:00:00Z'));
  });

  test('that comes twice in autumn is the first of the two', () => {
    // IANA tz, rules READ: Europe/London 2026-10-25, Australia/Lord_Howe 2026-04-05
    expect(instantOf('2026-10-25T01:30', 'Europe/London')).toBe(utc('2026-10-25T00:30:00Z'));
    expect(instantOf('2026-04-05T01:45', 'Australia/Lord_Howe')).toBe(utc('2026-04-04T14:45:00Z'));
  });

  test('that spring leaves out counts on past the change', () => {
    // 01:30 does not exist on 2026-03-29 in London: 30 minutes past the change at 01:00Z
    expect(instantOf('2026-03-29T01:30', 'Europe/London')).toBe(utc('2026-03-29T01:30:00Z'));
  });

  test('that is none is a mistake in the call', () => {
    expect(() => instantOf('2026-02-30', 'Europe/London')).toThrow(RangeError);
    expect(() => instantOf('tonight', 'Europe/London')).toThrow(RangeError);
  });
});

test('the day of the spring change has 23 hours in London, that of autumn 25', () => {
  const hours = (date: string, next: string) =>
    (instantOf(next, 'Europe/London') - instantOf(date, 'Europe/London')) / 3600;
  expect(hours('2026-03-29', '2026-03-30')).toBe(23);
  expect(hours('2026-10-25', '2026-10-26')).toBe(25);
});

test('an instant is written with the offset of its zone on that day', () => {
  const instant = utc('2027-01-09T21:00:00Z');
  expect(isoWithOffset(instant, 'Europe/London')).toBe('2027-01-09T21:00:00+00:00');
  expect(isoWithOffset(instant, 'America/New_York')).toBe('2027-01-09T16:00:00-05:00');
  expect(isoWithOffset(utc('2027-07-09T21:00:00Z'), 'Europe/London')).toBe('2027-07-09T22:00:00+01:00');
});

test('an instant between seconds is written to the nearest', () => {
  expect(isoWithOffset(utc('2027-01-09T20:59:59Z') + 0.6, 'UTC')).toBe('2027-01-09T21:00:00+00:00');
});

test('what is written is read back as the same instant, in every zone', () => {
  const zone = fc.constantFrom(
    'UTC',
    'Europe/London',
    'Australia/Lord_Howe',
    'America/St_Johns',
    'Pacific/Apia',
  );
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 4e9 }), zone, (instant, timeZone) => {
      expect(Date.parse(isoWithOffset(instant, timeZone)) / 1000).toBe(instant);
    }),
  );
});

test('the same instant is another date east and west of the date line', () => {
  const instant = utc('2027-01-09T23:30:00Z');
  expect(localDate(instant, 'Pacific/Auckland')).toBe('2027-01-10');
  expect(localDate(instant, 'Pacific/Honolulu')).toBe('2027-01-09');
});
