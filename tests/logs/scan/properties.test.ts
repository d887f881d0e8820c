/** The scanner against plain splitting, against `Number`, and against the general reader. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readNumber } from '../../../src/logs/numbers.ts';
import { numberInto } from '../../../src/logs/scan/number.ts';
import type { ScanPlan, ScanTime } from '../../../src/logs/scan/plan.ts';
import { tableOf } from '../../../src/logs/table.ts';
import { type TimeColumns, timeOf } from '../../../src/logs/timeColumns.ts';
import { planOf, scanned } from './scanned.ts';

const encode = (text: string) => new TextEncoder().encode(text);
const two = (n: number) => String(n).padStart(2, '0');

const numberText = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
  fc.integer({ min: -400_000, max: 400_000 }).map((hundredths) => (hundredths / 100).toFixed(2)),
  // long mantissas, round the limit of the short way
  fc
    .tuple(
      fc.constantFrom('', '-', '+'),
      fc.stringMatching(/^\d{1,25}$/),
      fc.stringMatching(/^(\.\d{0,30})?$/),
    )
    .map((pieces) => pieces.join('')),
  fc.stringMatching(/^[-+]?\d{0,3}\.?\d{0,3}([eE][-+]?\d{1,3})?$/),
);

describe('a number', () => {
  test.each(['.', ','] as const)(
    'with decimal mark "%s" is what Number makes of it, to the last bit',
    (decimal) => {
      fc.assert(
        fc.property(numberText, (text) => {
          const into = new Float64Array(1);
          const bytes = encode(text.replace('.', decimal));
          const read = numberInto(bytes, 0, bytes.length, decimal.charCodeAt(0), into, 0);
          const expected = text === '' ? Number.NaN : Number(text);
          expect(read).toBe(Number.isFinite(expected));
          if (read) expect(Object.is(into[0], expected)).toBe(true);
        }),
        { numRuns: 3000 },
      );
    },
  );

  test('is taken only where the general reader takes the same', () => {
    const cell = fc
      .array(fc.constantFrom(...'00123456789.,,.-+eE x∞'), { maxLength: 9 })
      .map((letters) => letters.join(''));
    fc.assert(
      fc.property(cell, fc.constantFrom('.', ','), (text, decimal) => {
        const into = new Float64Array(1);
        const bytes = encode(text);
        if (numberInto(bytes, 0, bytes.length, decimal.charCodeAt(0), into, 0))
          expect(into[0]).toBe(readNumber(text, decimal));
      }),
      { numRuns: 3000 },
    );
  });
});

interface Reading {
  readonly minute: number;
  readonly cells: readonly (string | null)[];
}

const clocks: Record<string, { readonly time: ScanTime; readonly text: (d: Date) => string }> = {
  iso: {
    time: { kind: 'stamp', at: 0, shape: 'year first' },
    text: (d) => `${d.toISOString().slice(0, 19)}Z`,
  },
  'day first': {
    time: { kind: 'stamp', at: 0, shape: 'year last' },
    text: (d) =>
      `${two(d.getUTCDate())}/${two(d.getUTCMonth() + 1)}/${d.getUTCFullYear()} ${two(d.getUTCHours())}:${two(d.getUTCMinutes())}`,
  },
  'half days': {
    time: { kind: 'stamp', at: 0, shape: 'open' },
    text: (d) =>
      `${d.getUTCMonth() + 1}-${d.getUTCDate()}-${two(d.getUTCFullYear() % 100)} ${d.getUTCHours() % 12 || 12}:${two(d.getUTCMinutes())}:00 ${d.getUTCHours() < 12 ? 'AM' : 'pm'}`,
  },
  epoch: { time: { kind: 'epoch', at: 0, perSecond: 1 }, text: (d) => String(d.getTime() / 1000) },
};
/** Seconds since 1970 of what was scanned, read as the clock that wrote it. */
const instantOf: Record<string, (parts: readonly number[], clock: number) => number> = {
  iso: ([y, m, d], clock) => Date.UTC(y, m - 1, d) / 1000 + clock,
  'day first': ([d, m, y], clock) => Date.UTC(y, m - 1, d) / 1000 + clock,
  'half days': ([m, d, y], clock) => Date.UTC(2000 + y, m - 1, d) / 1000 + clock,
  epoch: (_, clock) => clock,
};

const odd = fc.constantFrom('# a note', 'Time', 'x', '2026-01-01', '"', '"a', ';;;;;;', '-,-', 'é');
const lineBreak = fc.constantFrom('\n', '\r\n', '\r');
const cell = fc.option(fc.integer({ min: -50_000, max: 50_000 }).map((n) => (n / 1000).toFixed(3)));
const reading: fc.Arbitrary<Reading> = fc.record({
  // 2001 to 2032
  minute: fc.integer({ min: 16_400_000, max: 33_000_000 }),
  cells: fc.tuple(cell, cell),
});
const file = fc.record({
  rows: fc.array(
    fc.tuple(
      fc.oneof({ weight: 4, arbitrary: reading }, { weight: 1, arbitrary: odd }),
      lineBreak,
      fc.nat(1),
    ),
    { maxLength: 40 },
  ),
  clock: fc.constantFrom(...Object.keys(clocks)),
  delimiter: fc.constantFrom('\t', ';', ',', '|'),
  decimal: fc.constantFrom('.', ','),
  quoted: fc.boolean(),
  open: fc.boolean(),
});

test('a plain file is read as it was written, and each odd row in between is handed over once, in its place', () => {
  fc.assert(
    fc.property(file, ({ rows, clock, delimiter, decimal, quoted, open }) => {
      const quote = (text: string) => (quoted || delimiter === decimal ? `"${text}"` : text);
      const plan: ScanPlan = planOf({
        delimiter,
        decimal,
        width: 3,
        time: clocks[clock].time,
        columns: [1, 2],
      });
      let text = '';
      let line = 1;
      const expected: unknown[] = [];
      rows.forEach(([what, ends, empties], i) => {
        if (typeof what === 'string') {
          text += what;
          expected.push({ line, odd: what });
        } else {
          const cells = what.cells.map((it) => (it ?? '').replace('.', decimal));
          text += [clocks[clock].text(new Date(what.minute * 60_000)), ...cells].map(quote).join(delimiter);
          const values = what.cells.map((it) => (it === null ? Number.NaN : Number(it)));
          expected.push({ line, instant: what.minute * 60, values });
        }
        if (open && i === rows.length - 1) return;
        // "\n" alone after a "\r" would make one line break of two
        text += ends + (ends === '\r' ? '\r' : ends).repeat(empties);
        line += 1 + empties;
        if (ends === '\r') {
          text += '\r';
          line++;
        }
      });
      const met = scanned(text, plan).map((it) =>
        'odd' in it
          ? it
          : { line: it.line, instant: instantOf[clock](it.parts, it.clock), values: it.values },
      );
      expect(met).toEqual(expected);
    }),
    { numRuns: 500 },
  );
});

test('more rows than are handed on at once are all read, in their order', () => {
  const rows = Array.from({ length: 10_000 }, (_, i) =>
    i % 997 === 0 ? '# note' : `${1_700_000_000 + i},${i}`,
  );
  const met = scanned(rows.join('\n'), planOf({ time: { kind: 'epoch', at: 0, perSecond: 1 } }));
  expect(met.map((it) => ('odd' in it ? it.odd : `${it.clock},${it.values[0]}`))).toEqual(rows);
  expect(met.map(({ line }) => line)).toEqual(rows.map((_, i) => i + 1));
});

const times: readonly { readonly general: TimeColumns; readonly scan: ScanTime }[] = [
  ...(['year first', 'year last', 'open'] as const).flatMap((shape) => [
    { general: { kind: 'stamp', at: 0 } as const, scan: { kind: 'stamp', at: 0, shape } as const },
    {
      general: { kind: 'date and time', at: 0, time: 1 } as const,
      scan: { kind: 'date and time', at: 0, time: 1, shape } as const,
    },
  ]),
  { general: { kind: 'epoch', at: 0, perSecond: 1 }, scan: { kind: 'epoch', at: 0, perSecond: 1 } },
];

test('no row is read otherwise than the general reader reads it, however odd the file', () => {
  const noise = fc.constantFrom(
    ...Array<string>(150).fill(''),
    ...[' ', '\t', '"', '""', '#', 'x', '\0', '\u00a0', '\ufeff', ',', ';', '1'],
  );
  const cell = (...pieces: readonly (readonly string[])[]) =>
    fc
      .tuple(fc.boolean(), noise, ...pieces.map((piece) => fc.constantFrom(...piece)), noise)
      .map(([quoted, ...it]) => (quoted ? `"${it.join('')}"` : it.join('')));
  const dates = [
    '2026-01-05',
    '05/01/2026',
    '5.1.26',
    '1/2/2026',
    '26-1-05',
    '2026/1.5',
    '99/99/99',
    '2026-01-050',
  ];
  const clocks = [
    '12:30',
    '12:30',
    '1:05:09',
    '12:00:00.5',
    '23:59:59,125',
    '24:00',
    '23:59:60',
    '09:60',
    '1:5',
    '24:01',
    '',
  ];
  const halves = ['', '', ' AM', 'p.m.', ' pm', ' a'];
  const zones = ['', '', 'Z', '+01:00', '-0330', ' UTC', 'utc+01', ' GMT-00:00', '+1', '+13'];
  const epochs = [
    '1767614400',
    '1767614400.25',
    '1767614400,5',
    '12345678901',
    '631152000',
    '4102444800',
    '17676144',
  ];
  const numbers = [
    '21.5',
    '21,5',
    '-3',
    '+0',
    '1.234,5',
    '1e3',
    '.5',
    '5.',
    '-',
    '21 °C',
    '',
    '0x10',
    'Infinity',
  ];
  const first = fc.oneof(
    cell(dates, [' ', 'T', '  ', ' T', ', ', '_', '-', ''], clocks, halves, zones),
    cell(dates),
    cell(epochs),
  );
  const line = fc.tuple(
    first,
    fc.array(fc.oneof(cell(clocks, halves, zones), cell(numbers)), { maxLength: 3 }),
  );
  let taken = 0;
  fc.assert(
    fc.property(line, fc.constantFrom('\t', ';', ',', '|', 'blanks'), ([first, others], delimiter) => {
      const text = [first, ...others].join(delimiter === 'blanks' ? ' ' : delimiter);
      const [cells = []] = tableOf(text, delimiter).rows;
      for (const { general, scan } of times)
        for (const decimal of ['.', ','] as const)
          for (let at = scan.kind === 'date and time' ? 2 : 1; at <= others.length + 1; at++) {
            const plan = planOf({ delimiter, decimal, width: at + 1, time: scan, columns: [at] });
            const [met] = scanned(text, plan);
            if (met === undefined || 'odd' in met) continue;
            taken++;
            expect(cells).toHaveLength(at + 1);
            const stamp = timeOf(cells, general);
            expect({ ...met, line: 0, values: [] }).toEqual({
              line: 0,
              parts: stamp?.parts,
              clock: stamp?.clock,
              offset: stamp?.offset,
              values: [],
            });
            if (scan.kind !== 'epoch') expect(stamp?.shape).toBe(scan.shape);
            expect(met.values).toEqual([readNumber(cells[at], decimal)]);
          }
    }),
    { numRuns: 3000 },
  );
  // else the property would hold of nothing
  expect(taken).toBeGreaterThan(100);
});
