import { describe, expect, test } from 'vitest';
import { dateShapeOf } from '../../../src/logs/scan/date.ts';
import type { ScanPlan } from '../../../src/logs/scan/plan.ts';
import { scanRows } from '../../../src/logs/scan/scanRows.ts';
import { planOf, scanned } from './scanned.ts';

const row = (line: number, parts: number[], clock: number, values: number[], offset = Number.NaN) => ({
  line,
  parts,
  clock,
  offset,
  values,
});
const noon = 12 * 3600;

describe('a plain row', () => {
  const stamp = (shape: 'year first' | 'year last' | 'open') =>
    ({ time: { kind: 'stamp', at: 0, shape } }) as const;
  const cases: [what: string, text: string, plan: Partial<ScanPlan>, ReturnType<typeof row>][] = [
    ['ISO with Z', '2026-01-05T12:00:00Z,21.5', {}, row(1, [2026, 1, 5], noon, [21.5], 0)],
    ['ISO with an offset', '2026-01-05T12:00-01:30,21.5', {}, row(1, [2026, 1, 5], noon, [21.5], -5400)],
    ['fractions of a second', '2026-01-05 12:00:00.25,1', {}, row(1, [2026, 1, 5], noon + 0.25, [1])],
    ['a date alone', '2026-01-05,1', {}, row(1, [2026, 1, 5], 0, [1])],
    ['24:00 at the end of a day', '2026-01-05 24:00,1', {}, row(1, [2026, 1, 5], 86400, [1])],
    [
      'day, month and year with a decimal comma',
      '5/1/2026 12:00;21,5',
      { ...stamp('year last'), delimiter: ';', decimal: ',' },
      row(1, [5, 1, 2026], noon, [21.5]),
    ],
    [
      'noon on a clock of twelve hours',
      '01/05/26 12:00 PM\t-3',
      { ...stamp('open'), delimiter: '\t' },
      row(1, [1, 5, 26], noon, [-3]),
    ],
    [
      'midnight on a clock of twelve hours',
      '01/05/26 12:00:00 a.m.|0',
      { ...stamp('open'), delimiter: '|' },
      row(1, [1, 5, 26], 0, [0]),
    ],
    ['cells in quotes', '"2026-01-05 12:00","21,5"', { decimal: ',' }, row(1, [2026, 1, 5], noon, [21.5])],
    ['blanks round the cells', ' 2026-01-05 12:00 , 21.5 ', {}, row(1, [2026, 1, 5], noon, [21.5])],
    ['an empty cell', '2026-01-05 12:00,', {}, row(1, [2026, 1, 5], noon, [Number.NaN])],
    [
      'a text in a column that is not wanted',
      '2026-01-05 12:00,Küche 5,7',
      { width: 3, columns: [2] },
      row(1, [2026, 1, 5], noon, [7]),
    ],
    [
      'columns of blanks, date and time apart',
      '  2026.01.05   12:00  21.5 40',
      {
        delimiter: 'blanks',
        width: 4,
        time: { kind: 'date and time', at: 0, time: 1, shape: 'year first' },
        columns: [3, 2],
      },
      row(1, [2026, 1, 5], noon, [40, 21.5]),
    ],
    [
      'seconds since 1970',
      '1767614400.5,1',
      { time: { kind: 'epoch', at: 0, perSecond: 1 } },
      row(1, [1970, 1, 1], 1767614400.5, [1], 0),
    ],
    [
      'milliseconds since 1970',
      '1767614400500,1',
      { time: { kind: 'epoch', at: 0, perSecond: 1000 } },
      row(1, [1970, 1, 1], 1767614400.5, [1], 0),
    ],
  ];
  test.each(cases)('may hold %s', (_, text, plan, expected) => {
    expect(scanned(text, planOf(plan))).toEqual([expected]);
  });
});

describe('a row that is not plain is handed over as it stands:', () => {
  const cases: [what: string, text: string, plan?: Partial<ScanPlan>][] = [
    ['too few cells', '2026-01-05 12:00'],
    ['too many cells', '2026-01-05 12:00,1,2'],
    ['a cell too many that is empty', '2026-01-05 12:00,1,'],
    ['a word for a number', '2026-01-05 12:00,Err'],
    ['a number with its unit', '2026-01-05 12:00,21 °C'],
    ['thousands marked', '2026-01-05 12:00;1.234', { delimiter: ';', decimal: ',' }],
    ['a number beyond all doubles', '2026-01-05 12:00,1e999'],
    ['a lone minus', '2026-01-05 12:00,-'],
    ['a comment', '#2026-01-05 12:00,1'],
    [
      'a comment in front of a column that is not wanted',
      '# 3,2026-01-05 12:00,1',
      { width: 3, time: { kind: 'stamp', at: 1, shape: 'year first' }, columns: [2] },
    ],
    ['another order of the date', '05-01-2026 12:00,1'],
    ['a date with two separators', '2026-01/05 12:00,1'],
    ['a month as a name', '5 Jan 2026 12:00,1'],
    ['an hour that no clock shows', '2026-01-05 24:01,1'],
    ['a minute that no clock shows', '2026-01-05 12:60,1'],
    ['a time that breaks off', '2026-01-05 12:,1'],
    ['a control byte', '2026-01-05 12:00,1\0'],
    ['blanks alone', '  '],
    ['a blank before a quote', '2026-01-05 12:00, "1"'],
    ['a doubled quote', '2026-01-05 12:00,"1""2"'],
    ['text after a quote', '2026-01-05 12:00,"1"2'],
    ['quotes where the plan has none', '2026-01-05 12:00,"1"', { quotes: false }],
    ['an epoch before 1990', '400000000,1', { time: { kind: 'epoch', at: 0, perSecond: 1 } }],
    ['an epoch with a sign', '+1767614400,1', { time: { kind: 'epoch', at: 0, perSecond: 1 } }],
    ['an epoch that ends in its mark', '1767614400.,1', { time: { kind: 'epoch', at: 0, perSecond: 1 } }],
    ['an epoch with an exponent', '1767614400e0,1', { time: { kind: 'epoch', at: 0, perSecond: 1 } }],
    [
      'a byte outside ASCII among blanks',
      '2026-01-05 12:00\u00a01',
      { delimiter: 'blanks', width: 2, time: { kind: 'stamp', at: 0, shape: 'year first' } },
    ],
  ];
  test.each(cases)('%s', (_, text, plan) => {
    const good = plan?.delimiter === undefined && plan?.time === undefined ? '2026-01-05 12:00,1\n' : '';
    const met = scanned(`${good}${text}\r\n`, planOf(plan));
    expect(met.at(-1)).toEqual({ line: good === '' ? 1 : 2, odd: text });
    expect(met).toHaveLength(good === '' ? 1 : 2);
  });
});

describe('lines', () => {
  test('are counted as an editor does, whichever way they break, and empty ones too', () => {
    const met = scanned('2026-01-01,1\r\n2026-01-02,2\r2026-01-03,3\n\n\r\r\n# note\n2026-01-04,4', planOf());
    expect(met.map(({ line }) => line)).toEqual([1, 2, 3, 7, 8]);
  });

  test('inside a quoted cell are left to the general reader, which says where the row ends', () => {
    const text = '2026-01-01,1\n2026-01-02,"two\r\nlines"\n2026-01-03,3\n';
    expect(scanned(text, planOf(), () => text.indexOf('"\n') + 1)).toEqual([
      row(1, [2026, 1, 1], 0, [1]),
      { line: 2, odd: '2026-01-02,"two\r\nlines"' },
      row(4, [2026, 1, 3], 0, [3]),
    ]);
  });

  test('are not looked at any more once the general reader has taken the rest of the file', () => {
    const text = '2026-01-01,1\nodd\n2026-01-03,3\n';
    expect(scanned(text, planOf(), () => text.length)).toHaveLength(2);
  });
});

test('a plan that names a column beyond the width is refused', () => {
  const sink = { rows: () => {}, odd: (_: number, to: number) => to };
  expect(() => scanRows(new Uint8Array(), 0, 1, planOf({ columns: [2] }), sink)).toThrow(RangeError);
});

test('the shape of a date is learnt from one cell, and no shape from what the scanner does not read', () => {
  const shapes = ['2026-01-05T12:00Z', '5.1.2026 12:00', '12/31/26', '5 Jan 2026', '20260105', 'Time', ''];
  expect(shapes.map(dateShapeOf)).toEqual(['year first', 'year last', 'open', null, null, null, null]);
});
