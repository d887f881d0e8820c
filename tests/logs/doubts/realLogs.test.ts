/** Every reading that is doubted in the records of tests/real-logs and sample-logs, each looked at. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { doubtsOf } from '../../../src/logs/doubts/index.ts';
import { readLog } from '../../../src/logs/readLog.ts';
import { hints, isoOf } from '../reading.ts';
import { doubted, every, placesOf, range } from './series.ts';

const root = new URL('../../../', import.meta.url);

/** Per column with doubts: kind, count, first and last instant of each. */
function doubtsIn(file: string, timeZone: string) {
  const reading = readLog(file, readFileSync(new URL(file, root)), hints({ timeZone }));
  if (reading.kind !== 'read') throw new Error(`${file} is unreadable`);
  const doubts = doubtsOf(reading.channels);
  return reading.channels.flatMap(({ column, time }, c) =>
    Object.entries(placesOf(doubts[c])).map(([kind, places]) => ({
      column,
      kind,
      count: places.length,
      from: isoOf(time[places[0]]),
      to: isoOf(time[places[places.length - 1]]),
    })),
  );
}

describe('the solar house', () => {
  const file = 'tests/real-logs/solar-house-2012/solar-house-2012.txt';

  test('has one channel in doubt: its weather column, stuck at 15 °C for four days', () => {
    // READ: lines 286 to 671 hold 15 from 16/03/2012 10:45 to 20/03/2012 11:00, of which the first stays; meanwhile the
    // house's own outdoor sensor goes from 10.4 to 25.7 °C. COMPUTED with awk: 386 lines.
    expect(doubtsIn(file, 'UTC').filter(({ kind }) => kind !== 'false-zero')).toEqual([
      {
        column: '5:Weather_Temperature',
        kind: 'stuck',
        count: 385,
        from: '2012-03-16T11:00:00Z',
        to: '2012-03-20T11:00:00Z',
      },
    ]);
  });

  test('has the first reading of that channel in doubt as well: 0 before 6.8 and 17', () => {
    const rows = readFileSync(new URL(file, root), 'latin1').trim().split('\n').slice(1);
    const weather = rows.map((row) => Number(row.split(' ')[4]));
    expect(doubted(every(15, 'temperature', weather))).toEqual({
      'false-zero': [0],
      stuck: range(285, 670),
    });
  });
});

test('the extract of the low-energy house has nothing in doubt: showers, frost and 0.0 °C dew points are real', () => {
  expect(doubtsIn('tests/real-logs/low-energy-house-extract.csv', 'Europe/Brussels')).toEqual([]);
});

test('the demonstration house has nothing in doubt', () => {
  const files = readdirSync(new URL('sample-logs/', root)).filter((it) => it.endsWith('.csv'));
  expect(files.length).toBeGreaterThan(5);
  for (const file of files) expect(doubtsIn(`sample-logs/${file}`, 'Europe/London')).toEqual([]);
});
