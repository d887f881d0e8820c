/** Clocks against RFC 3339 and the IANA time zone database. */
import { describe, expect, test } from 'vitest';
import { readLog } from '../../src/logs/index.ts';
import { timeOfSerial } from '../../src/logs/serialDays.ts';
import { instantsOf, zoneBetween } from '../../src/logs/zone.ts';

/** The instants [s since 1970] of a log of these times. */
function instants(times: readonly string[], timeZone: string): number[] {
  const text = `Time,Temperature\n${times.map((time, i) => `${time},${i + 1}`).join('\n')}\n`;
  const reading = readLog('log.csv', new TextEncoder().encode(text), {
    timeZone,
    clockOffset: 0,
    columns: {},
  });
  return reading.kind === 'read' ? [...reading.channels[0].time] : [];
}

describe('RFC 3339, section 5.8', () => {
  test.each([
    // strings MEMORY (RFC 3339, 5.8); instants READ in public tests
    ['1985-04-12T23:20:50.52Z', 482196050.52],
    ['1996-12-19T16:39:57-08:00', 851042397],
    ['1996-12-20T00:39:57Z', 851042397],
    ['1937-01-01T12:00:27.87+00:20', -1041337172.13],
    // COMPUTED: a leap second belongs to no POSIX second of its own; it is the one that follows, 1991-01-01T00:00:00Z
    ['1990-12-31T23:59:60Z', Date.UTC(1991, 0, 1) / 1000],
    ['1990-12-31T15:59:60-08:00', Date.UTC(1991, 0, 1) / 1000],
    // READ (RFC 3339, 5.6): t and z may be lower case; 4.3: -00:00 is UTC with the local offset unknown
    ['1996-12-20t00:39:57z', 851042397],
    ['1996-12-20T00:39:57-00:00', 851042397],
  ])('%s', (text, instant) => {
    // written to hundredths of a second; a double holds these to 1e-7
    expect(instants([text], 'Pacific/Auckland')[0]).toBeCloseTo(instant, 6);
  });
});

// READ: IANA tz rules in eggert/tz, as held in published-checks.md, section 10; instants confirmed with zoneinfo
const changes = [
  { zone: 'Europe/London', at: '2026-03-29T01:00Z', before: 0, after: 1 },
  { zone: 'Europe/London', at: '2026-10-25T01:00Z', before: 1, after: 0 },
  { zone: 'America/New_York', at: '2026-03-08T07:00Z', before: -5, after: -4 },
  { zone: 'America/New_York', at: '2026-11-01T06:00Z', before: -4, after: -5 },
  { zone: 'Australia/Lord_Howe', at: '2026-10-03T15:30Z', before: 10.5, after: 11 },
  { zone: 'Australia/Lord_Howe', at: '2026-04-04T15:00Z', before: 11, after: 10.5 },
];
const seconds = (iso: string) => Date.parse(iso) / 1000;
const year = (zone: string) => zoneBetween(zone, seconds('2026-01-01T00:00Z'), seconds('2027-01-01T00:00Z'));

describe('clock changes of 2026', () => {
  test.each(changes)('$zone at $at', ({ zone, at, before, after }) => {
    const instant = seconds(at);
    const local = (hours: number, offset: number) => instant + offset + hours * 3600;
    const last = instantsOf(year(zone), local(before, -1));
    const first = instantsOf(year(zone), local(after, 0));
    expect(last.first).toBe(instant - 1);
    expect(after > before ? first.first : first.second).toBe(instant);
  });

  test.each([
    ['Europe/London', '2026-03-29T01:30Z', []],
    ['Europe/London', '2026-10-25T01:30Z', ['2026-10-25T00:30Z', '2026-10-25T01:30Z']],
    ['Australia/Lord_Howe', '2026-04-05T01:45Z', ['2026-04-04T14:45Z', '2026-04-04T15:15Z']],
    ['Australia/Lord_Howe', '2026-10-04T02:15Z', []],
  ])('%s: local %s (written as if UTC) is %j', (zone, local, wanted) => {
    const { count, first, second } = instantsOf(year(zone), seconds(local));
    expect(count).toBe(wanted.length);
    expect([first, second].slice(0, count)).toEqual(wanted.map(seconds));
  });

  test.each([
    ['Europe/London', '2026-03-29', 23],
    ['Europe/London', '2026-10-25', 25],
    ['Australia/Lord_Howe', '2026-10-04', 23.5],
    ['Australia/Lord_Howe', '2026-04-05', 24.5],
  ])('%s: %s has %d hours', (zone, date, hours) => {
    const midnight = seconds(`${date}T00:00Z`);
    const begin = instantsOf(year(zone), midnight).first;
    expect(instantsOf(year(zone), midnight + 86400).first - begin).toBe(hours * 3600);
  });

  test('a log that runs through the half hour of Lord Howe keeps its spacing', () => {
    const times = ['01:15', '01:30', '01:45', '01:30', '01:45', '02:00'].map((time) => `2026-04-05 ${time}`);
    const got = instants(times, 'Australia/Lord_Howe');
    expect(got.map((time) => time - got[0])).toEqual([0, 900, 1800, 2700, 3600, 4500]);
    expect(got[1]).toBe(seconds('2026-04-04T14:30Z'));
  });
});

// READ: 1900-01-01 to 03-01 and 9999 ECMA-376 Part 4 (60 is the 29 February that never was), 1998 and 2011 Microsoft
// as quoted in two manuals, 1904 MS-XLS; COMPUTED: 1970 and 2026, from those (published-checks.md, section 10)
const serials: readonly (readonly [date: string, from1900: number, from1904: number | null])[] = [
  ['1900-01-01T00:00Z', 1, null],
  ['1900-02-28T00:00Z', 59, null],
  ['1900-03-01T00:00Z', 61, null],
  ['1904-01-01T00:00Z', 1462, 0],
  ['1970-01-01T00:00Z', 25569, 24107],
  ['1998-07-05T00:00Z', 35981, 34519],
  ['2011-07-05T00:00Z', 40729, 39267],
  ['2026-03-29T01:30Z', 46110.0625, 44648.0625],
  ['2026-11-25T06:00Z', 46351.25, 44889.25],
  ['9999-12-31T00:00Z', 2958465, 2957003],
];

describe("a spreadsheet's days", () => {
  test.each(serials)('%s is %d from 1900 and %s from 1904', (date, from1900, from1904) => {
    expect(timeOfSerial(from1900, 1900)).toBe(seconds(date));
    if (from1904 !== null) expect(timeOfSerial(from1904, 1904)).toBe(seconds(date));
  });

  test('the 29 February 1900 is no time', () => {
    expect(timeOfSerial(60, 1900)).toBeNaN();
    expect(timeOfSerial(60.75, 1900)).toBeNaN();
  });

  test('the missing half hour of London stands in a log of serials as local time', () => {
    const rows = [46110, 46110.0625, 46110.125].map((serial, i) => `${serial},${i + 1}`);
    const reading = readLog(
      'log.csv',
      new TextEncoder().encode(`Date from 1900,Temperature\n${rows.join('\n')}\n`),
      {
        timeZone: 'Europe/London',
        clockOffset: 0,
        columns: {},
      },
    );
    const [channel] = reading.kind === 'read' ? reading.channels : [];
    // 00:00 is UTC, 01:30 does not exist, 03:00 is an hour ahead of UTC
    expect([...channel.time]).toEqual([seconds('2026-03-29T00:00Z'), seconds('2026-03-29T02:00Z')]);
  });
});
