/** What a log leaves open of its clock is asked, and an honest one is not asked about. */
import { describe, expect, test } from 'vitest';
import { zoneNamed } from '../../src/logs/zoneNamed.ts';
import { codesOf, read } from './reading.ts';

const two = (n: number) => String(n).padStart(2, '0');
/** A log of one row per hour from 5 January 2026 on, its dates written by day, month and place of the row. */
function hourly(
  hours: number,
  written: (day: number, month: number, i: number) => string,
  from = 5,
): string[] {
  return Array.from({ length: hours }, (_, i) => {
    const time = new Date(Date.UTC(2026, 0, from, i));
    const date = written(time.getUTCDate(), time.getUTCMonth() + 1, i);
    return `${date}/2026 ${two(time.getUTCHours())}:00,${15 + (i % 7)}`;
  });
}
const dayFirst = (day: number, month: number) => `${two(day)}/${two(month)}`;
const turned = (day: number, month: number) => (day > 12 ? dayFirst(day, month) : dayFirst(month, day));
const log = (rows: readonly string[]) => read(`Time,Temperature\n${rows.join('\n')}\n`, { timeZone: 'UTC' });

describe('dates that contradict each other', () => {
  test('are asked about in a file from its oldest row on and from its newest', () => {
    const rows = hourly(40 * 24, turned);
    expect(codesOf(log(rows))).toContain('dates-contradict');
    expect(codesOf(log(rows.toReversed()))).toContain('dates-contradict');
  });

  test('are asked about where the turned ones come last', () => {
    expect(codesOf(log(hourly(18 * 24, turned, 20)))).toContain('dates-contradict');
  });

  test('are none in a day-first record with pauses, with rows out of order, or with one row a week', () => {
    const rows = hourly(60 * 24, dayFirst);
    const paused = rows.filter((_, i) => Math.floor(i / 50) % 3 > 0);
    const late = [...rows.slice(500), ...rows.slice(0, 500)];
    const weekly = rows.filter((_, i) => i % 168 === 0);
    for (const honest of [rows, paused, late, weekly])
      expect(codesOf(log(honest))).not.toContain('dates-contradict');
  });
});

describe('a column beside the dates', () => {
  test('is no hour of the day where it goes up and down within each day', () => {
    const rows = Array.from({ length: 48 }, (_, i) => `2026-01-${25 + Math.floor(i / 24)},${(i * 7) % 19}`);
    const reading = read(`Date,Temperature\n${rows.join('\n')}\n`);
    expect(codesOf(reading)).toContain('times-collapse');
    expect(reading.understood?.clock.columns).toEqual(['Date']);
  });

  test('is the hour where the house names it, whatever its header', () => {
    const rows = Array.from(
      { length: 48 },
      (_, i) => `2026-01-${25 + Math.floor(i / 24)},${i % 24},20.${i % 7}`,
    );
    const file = `Date,Slot,Temperature\n${rows.join('\n')}\n`;
    const reading = read(file, { columns: { date: 'Date', time: 'Slot' } });
    expect(reading.kind === 'read' && reading.interval).toBe(3600);
    expect(codesOf(reading)).toEqual([]);
    expect(codesOf(read(file))).toContain('times-collapse');
  });
});

describe('what a text says of a clock that changes', () => {
  const HOUR = 3600;
  test.each([
    ['Zeit (MEZ/MESZ)', 1],
    ['Time [CET or CEST]', 1],
    ['Time (EDT, EST)', -5],
    ['Time (CST/CDT)', -6],
    ['Time (GMT/BST)', 0],
    ['GMT+01:00 (DST: on)', 1],
    ['UTC-5 with DST', -5],
  ])('%s', (text, winter) => {
    expect(zoneNamed(text)).toMatchObject({
      kind: 'changing',
      winter: winter * HOUR,
      summer: (winter + 1) * HOUR,
    });
  });

  test.each([
    ['Time (CET)', 1],
    ['Time (CEST)', 2],
    ['GMT+01:00 (DST: off)', 1],
    ['UTC/GMT', 0],
  ])('%s states one offset', (text, hours) => {
    expect(zoneNamed(text)).toEqual({ kind: 'offset', offset: hours * HOUR });
  });
});
