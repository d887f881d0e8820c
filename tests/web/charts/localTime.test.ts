/** Local times of a house without the heavy calendar library, against it. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { instantOf, isoWithOffset } from '../../../src/sky/zone.ts';
import { instantOfLocal, isoTimeOf, localTimeOf } from '../../../web/charts/localTime.ts';

const zones = ['Europe/London', 'UTC', 'America/St_Johns', 'Australia/Lord_Howe', 'Asia/Kathmandu'];
const minute = fc.integer({ min: 0, max: 90_000_000 }).map((it) => it * 60); // 1970 to 2141

test('an instant and its local time agree with the calendar library, whatever the zone', () => {
  fc.assert(
    fc.property(minute, fc.constantFrom(...zones), (instant, zone) => {
      const iso = isoWithOffset(instant, zone);
      expect(localTimeOf(instant, zone)).toBe(iso.slice(0, 16));
      if (!/:\d\d:\d\d$/.test(iso.slice(19))) expect(isoTimeOf(instant, zone)).toBe(iso);
      const local = iso.slice(0, 16);
      expect(instantOfLocal(local, zone)).toBe(instantOf(local, zone));
    }),
    { numRuns: 300 },
  );
});

test('a time that the spring change leaves out counts on, a doubled one is the first of the two', () => {
  // READ: Directive 2000/84/EC: clocks change at 01:00 UTC on the last Sundays of March and October
  expect(instantOfLocal('2027-03-28T01:30', 'Europe/London')).toBe(Date.UTC(2027, 2, 28, 1, 30) / 1000);
  expect(instantOfLocal('2027-10-31T01:30', 'Europe/London')).toBe(Date.UTC(2027, 9, 31, 0, 30) / 1000);
});

test('a date alone is its midnight, and what is no time is none', () => {
  expect(instantOfLocal('2027-01-09', 'Europe/London')).toBe(Date.UTC(2027, 0, 9) / 1000);
  expect(instantOfLocal('', 'UTC')).toBeNull();
});
