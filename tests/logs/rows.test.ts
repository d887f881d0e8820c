/** What becomes of each row: kept, left out, said twice, out of order; and on which line. */
import { describe, expect, test } from 'vitest';
import type { LogReading } from '../../src/logs/index.ts';
import { type DoubtKind, doubtKinds } from '../../src/logs/log.ts';
import { channelsOf, codesOf, finding, read } from './reading.ts';

const lines = (...rows: string[]) => `${rows.join('\n')}\n`;

describe('rows', () => {
  test('are counted once, and lines as an editor counts them', () => {
    const reading = read(
      lines(
        'Logger,cellar',
        '',
        '# a remark',
        'Time,Note,Temperature',
        '2026-01-25 18:00,"two',
        'lines",21.5',
        'not a time,,21',
        '# another remark',
        '',
        '2026-01-25 18:20,,',
        '2026-01-25 18:30,,20',
        '2026-01-25 18:40,,19,8,7',
      ),
    );
    expect(reading).toMatchObject({ kind: 'read', rows: 5, rejected: 3, interval: 1800 });
    const left = reading.findings.filter((it) => it.code === 'rows-left-out');
    expect(left.map(({ why, count, lines: at }) => [why, count, at])).toEqual([
      ['no time', 1, [7]],
      ['no value', 1, [10]],
      ['ragged', 1, [12]],
    ]);
    expect(left.map(({ where }) => where.line)).toEqual([7, 10, 12]);
  });

  test('that repeat an earlier one are left out and counted', () => {
    const row = '2026-01-25 18:00,21.5';
    const reading = read(lines('Time,Temperature', row, row, '2026-01-25 18:10,21.4', row));
    expect(channelsOf(reading)[0][3]).toEqual([21.5, 21.4]);
    expect(reading).toMatchObject({ rows: 4, rejected: 2 });
    expect(finding(reading, 'rows-repeated')).toMatchObject({ count: 2, lines: [3, 5] });
  });

  test('that contradict an earlier one are left out: the first value stays', () => {
    const reading = read(
      lines('Time,Temperature', '2026-01-25 18:00,21.5', '2026-01-25 18:00,22', '2026-01-25 18:10,21'),
    );
    expect(channelsOf(reading)[0][3]).toEqual([21.5, 21]);
    expect(finding(reading, 'values-conflict')).toMatchObject({ count: 1, lines: [3] });
  });

  test('of one instant are joined when each gives another channel', () => {
    const reading = read(
      lines(
        'Time,Temperature,Humidity',
        '2026-01-25 18:00,21.5,',
        '2026-01-25 18:00,,45',
        '2026-01-25 18:10,21,46',
      ),
    );
    expect(channelsOf(reading).map(([, , , values]) => values)).toEqual([
      [21.5, 21],
      [0.45, 0.46],
    ]);
    expect(reading).toMatchObject({ rows: 3, rejected: 0, findings: [] });
  });

  test('out of order are sorted, and said to be', () => {
    const reading = read(
      lines(
        'Time,Temperature',
        '2026-01-25 18:10,2',
        '2026-01-25 18:00,1',
        '2026-01-25 18:20,3',
        '2026-01-25 18:30,4',
      ),
    );
    expect(channelsOf(reading)[0][3]).toEqual([1, 2, 3, 4]);
    expect(finding(reading, 'rows-out-of-order')).toMatchObject({ count: 1, lines: [3] });
  });

  test('are named by their first five lines only', () => {
    const bad = Array.from({ length: 12 }, () => 'x,20');
    const reading = read(lines('Time,Temperature', '2026-01-25 18:00,21', ...bad));
    expect(finding(reading, 'rows-left-out')).toMatchObject({ count: 12, lines: [3, 4, 5, 6, 7] });
  });

  test('whose decimal comma fell between commas give no half of a number', () => {
    const reading = read(lines('Time,Temperature', '2026-01-25 18:00,21,5', '2026-01-25 18:10,21,4'));
    expect(reading.kind).toBe('unreadable');
    expect(finding(reading, 'rows-left-out')).toMatchObject({ why: 'ragged', count: 2 });
  });

  test('at the end of a file still being written give no half of a number', () => {
    const reading = read('Time,Temperature,Humidity\n2026-01-25 18:00,21.5,45\n2026-01-25 18:10,2');
    expect(channelsOf(reading)[0][3]).toEqual([21.5]);
    expect(finding(reading, 'rows-left-out')).toMatchObject({ why: 'ragged', lines: [3] });
  });
});

describe('day and month', () => {
  const days = (...dates: string[]) =>
    lines('Time,Temperature', ...dates.flatMap((date) => [`${date} 00:00,1`, `${date} 12:00,2`]));
  const firstDay = (text: string, dateOrder?: 'day-first' | 'month-first') =>
    channelsOf(read(text, { dateOrder }))[0][2][0].slice(0, 10);

  test('are told apart by any day above 12, wherever it stands', () => {
    expect(firstDay(days('05/03/2026', '06/03/2026', '13/03/2026'))).toBe('2026-03-05');
    expect(firstDay(days('05/03/2026', '05/04/2026', '05/13/2026'))).toBe('2026-05-03');
  });

  test('are told apart by days that follow each other', () => {
    expect(firstDay(days('05/03/2026', '06/03/2026', '07/03/2026'))).toBe('2026-03-05');
    expect(firstDay(days('03/05/2026', '03/06/2026', '03/07/2026'))).toBe('2026-03-05');
    expect(codesOf(read(days('03/05/2026', '03/06/2026', '03/07/2026')))).toEqual([]);
  });

  test('are taken day first where nothing tells, and that is said', () => {
    expect(firstDay(days('05/03/2026'))).toBe('2026-03-05');
    expect(finding(read(days('05/03/2026')), 'date-order-unknown')).toMatchObject({ taken: 'day-first' });
  });

  test('are what the house says, if it says so', () => {
    expect(firstDay(days('05/03/2026'), 'month-first')).toBe('2026-05-03');
    expect(codesOf(read(days('05/03/2026'), { dateOrder: 'month-first' }))).toEqual([]);
  });

  test('of a file that mixes both orders are not settled in silence', () => {
    const mixed = days('13/03/2026', '14/03/2026', '15/03/2026', '03/16/2026', '03/17/2026');
    expect(codesOf(read(mixed))).toContain('date-order-unknown');
  });
});

describe('clock changes', () => {
  const london = { timeZone: 'Europe/London' };
  const times = (text: string) => channelsOf(read(text, london))[0][2].map((time) => time.slice(11, 16));

  test('in spring: rows of the hour that does not exist are left out and named', () => {
    const reading = read(
      lines(
        'Time,Temperature',
        '2026-03-29 00:50,1',
        '2026-03-29 01:00,2',
        '2026-03-29 01:50,3',
        '2026-03-29 02:00,4',
      ),
      london,
    );
    expect(channelsOf(reading)[0][2]).toEqual(['2026-03-29T00:50:00Z', '2026-03-29T01:00:00Z']);
    expect(finding(reading, 'local-time-missing')).toMatchObject({
      count: 2,
      lines: [3, 4],
      timeZone: 'Europe/London',
    });
    expect(reading).toMatchObject({ rows: 4, rejected: 2 });
  });

  const autumn = ['00:30', '01:00', '01:30', '01:00', '01:30', '02:00'].map(
    (time, i) => `2026-10-25 ${time},${i}`,
  );
  const inUTC = ['23:30', '00:00', '00:30', '01:00', '01:30', '02:00'];

  test('are looked up for times with fractions of a second too', () => {
    expect(times(lines('Time,Temperature', '2026-07-01 12:00:00.4749,1'))).toEqual(['11:00']);
  });

  test('in autumn: the doubled hour is two hours, told apart by the order of the rows', () => {
    expect(times(lines('Time,Temperature', ...autumn))).toEqual(inUTC);
    expect(codesOf(read(lines('Time,Temperature', ...autumn), london))).toEqual([]);
  });

  test('in autumn, newest row first', () => {
    expect(times(lines('Time,Temperature', ...autumn.toReversed()))).toEqual(inUTC);
  });

  test('in autumn, with the record pasted in twice', () => {
    const reading = read(lines('Time,Temperature', ...autumn, ...autumn), london);
    expect(channelsOf(reading)[0][3]).toEqual([0, 1, 2, 3, 4, 5]);
    expect(finding(reading, 'rows-repeated')).toMatchObject({ count: 6 });
  });

  test('in autumn, hourly: the same time twice', () => {
    const rows = ['00:00', '01:00', '01:00', '02:00'].map((time, i) => `2026-10-25 ${time},${i}`);
    expect(times(lines('Time,Temperature', ...rows))).toEqual(['23:00', '00:00', '01:00', '02:00']);
  });

  test('in autumn: a clock that does not go back is noticed', () => {
    const rows = ['00:30', '01:00', '01:30', '02:00', '02:30'].map((time, i) => `2026-10-25 ${time},${i}`);
    expect(finding(read(lines('Time,Temperature', ...rows), london), 'doubled-hour-once')).toMatchObject({
      count: 1,
      lines: [3],
    });
  });
});

const codeOf = (kind: DoubtKind) => 1 + doubtKinds.indexOf(kind);
const doubtsIn = (reading: LogReading) => (reading.kind === 'read' ? [...reading.channels[0].doubt] : null);

describe('what stands for no reading', () => {
  test('fault values are left out of the column, and said with their lines', () => {
    const cells = ['21', '-999', '20', 'Err', '--', '19'];
    const reading = read(lines('Time,Temperature', ...cells.map((cell, i) => `2026-01-25 18:0${i},${cell}`)));
    expect(channelsOf(reading)[0][3]).toEqual([21, 20, 19]);
    const faults = reading.findings.filter((it) => it.code === 'sentinels-left-out');
    expect(faults.map(({ value, count, lines: at }) => [value, count, at])).toEqual([
      [-999, 1, [3]],
      ['Err', 1, [5]],
      ['--', 1, [6]],
    ]);
    expect(reading).toMatchObject({ rows: 6, rejected: 3 });
  });

  test('85 °C of a sensor that has not begun to measure stays in the column, doubted', () => {
    const cells = [21, 85, 20, 85, 20];
    const reading = read(lines('Time,Temperature', ...cells.map((cell, i) => `2026-01-25 18:0${i},${cell}`)));
    expect(channelsOf(reading)[0][3]).toEqual(cells);
    expect(doubtsIn(reading)).toEqual([0, codeOf('power-on'), 0, codeOf('power-on'), 0]);
    expect(finding(reading, 'readings-doubted')).toMatchObject({ why: 'power-on', count: 2, lines: [3, 5] });
  });

  test('85 °C on the way up to it is a reading', () => {
    const reading = read(
      lines('Time,Temperature', '2026-01-25 18:00,60', '2026-01-25 18:10,85', '2026-01-25 18:20,58'),
    );
    expect(channelsOf(reading)[0][3]).toEqual([60, 85, 58]);
    expect(doubtsIn(reading)).toEqual([0, 0, 0]);
  });

  test('more digits than any number has are no reading', () => {
    const reading = read(
      lines(
        'Time,Temperature',
        '2026-01-25 18:00,21',
        `2026-01-25 18:10,${'9'.repeat(400)}`,
        '2026-01-25 18:20,20',
      ),
    );
    expect(channelsOf(reading)[0][3]).toEqual([21, 20]);
    expect(finding(reading, 'sentinels-left-out')).toMatchObject({ count: 1, lines: [3] });
  });

  test('999.9 hPa is a pressure and 999 W a power', () => {
    const reading = read(
      lines('Time,Pressure (hPa),Power (W)', '2026-01-25 18:00,999.9,999', '2026-01-25 18:10,1000,0'),
    );
    expect(channelsOf(reading).map(([, , , values]) => values[1])).toEqual([100000, 0]);
    expect(channelsOf(reading)[1][3][0]).toBe(999);
    expect(reading.findings).toEqual([]);
  });

  test('a column of nothing but zeros is left out beside one that has readings', () => {
    const reading = read(lines('Time,Temp A,Temp B', '2026-01-25 18:00,21,0', '2026-01-25 18:10,20,0'));
    expect(channelsOf(reading).map(([column]) => column)).toEqual(['Temp A']);
    expect(finding(reading, 'all-zero-column-left-out')?.where.column).toBe('Temp B');
  });

  test('calm wind, a cold 0 °C and a heater that stays off are readings', () => {
    const reading = read(
      lines(
        'Time,Temp,Wind (m/s),Power (W)',
        '2026-01-25 18:00,0,0,0',
        '2026-01-25 18:10,0.5,0,0',
        '2026-01-25 18:20,0,0,0',
      ),
    );
    expect(channelsOf(reading).map(([, , , values]) => values)).toEqual([
      [0, 0.5, 0],
      [0, 0, 0],
      [0, 0, 0],
    ]);
    expect(reading.findings).toEqual([]);
  });

  test('a first 0 °C before readings far above it is a sensor that starts up', () => {
    const rows = [0, 17, 18, 18, 18, 18].map((value, i) => `2026-01-25 18:${i}0,${value}`);
    const reading = read(lines('Time,Temperature', ...rows));
    expect(doubtsIn(reading)).toEqual([codeOf('false-zero'), 0, 0, 0, 0, 0]);
    expect(finding(reading, 'readings-doubted')).toMatchObject({ why: 'false-zero', count: 1, lines: [2] });
  });
});

describe('columns', () => {
  test('that the house names and the file has not are said with the headers there are', () => {
    const reading = read(lines('Time,Indoor temperature', '2026-01-25 18:00,21'), {
      columns: { temperature: 'T_in' },
    });
    expect(channelsOf(reading).map(([column]) => column)).toEqual(['Indoor temperature']);
    expect(finding(reading, 'column-not-found')).toMatchObject({
      wanted: 'T_in',
      headers: ['Time', 'Indoor temperature'],
    });
  });

  test('that the house names stand alone for their quantity; other quantities are read as well', () => {
    const reading = read(lines('Time,T1,T2,RH_1', '2026-01-25 18:00,21,22,45'), {
      columns: { temperature: 'T2' },
    });
    expect(channelsOf(reading).map(([column]) => column)).toEqual(['T2', 'RH_1']);
  });

  test('without a header can be named by their place', () => {
    const reading = read(lines('2026-01-25 18:00,1,21', '2026-01-25 18:10,2,20'), {
      columns: { temperature: 'column 3' },
    });
    expect(channelsOf(reading)[0].slice(0, 2)).toEqual(['column 3', 'temperature']);
  });

  test('of energy are told from running meters by whether they ever fall', () => {
    const rows = (value: (i: number) => number) =>
      Array.from({ length: 10 }, (_, i) => `2026-01-25 1${i}:00,${value(i)}`);
    expect(channelsOf(read(lines('Time,kWh', ...rows((i) => 1000 + i))))[0][1]).toBe('meter');
    expect(channelsOf(read(lines('Time,kWh', ...rows((i) => i % 3))))[0][1]).toBe('energy');
  });
});
