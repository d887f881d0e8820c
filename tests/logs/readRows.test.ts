/** Plain rows are scanned as bytes, others read as cells: both ways give the same table, whatever the file. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readRows } from '../../src/logs/readRows.ts';
import { scanPlanOf } from '../../src/logs/scanPlan.ts';
import { understand } from '../../src/logs/understand.ts';
import { hints } from './reading.ts';

const two = (n: number) => String(n).padStart(2, '0');
const clocks: Readonly<Record<string, (at: Date) => string>> = {
  iso: (at) => at.toISOString().slice(0, 19).replace('T', ' '),
  zoned: (at) => `${at.toISOString().slice(0, 19)}Z`,
  'day first': (at) =>
    `${two(at.getUTCDate())}/${two(at.getUTCMonth() + 1)}/${at.getUTCFullYear()} ${at.toISOString().slice(11, 16)}`,
  epoch: (at) => String(at.getTime() / 1000),
};

/** What else may stand in a log: each line is one of these or a reading. */
const oddLines = [
  '',
  '# a comment',
  'Time;Temperature;Humidity',
  'Humidity;Time;Temperature',
  'nonsense',
  '2026-01-05 10:00:00;--;50',
  '2026-01-05 10:00:00;21,5 °C;50',
  '2026-01-05 10:00:00;"21;5";50',
  '2026-01-05 10:00:00;"21\n5";50',
  '2026-01-05 10:00:00;"21;50',
  '2026-01-05 10:00:00;-999;50;7',
  '2026-01-05 10:00:00;20',
  ' ; ; ',
  'Average;20;50',
] as const;

const file = fc.record({
  clock: fc.constantFrom(...Object.keys(clocks)),
  quoted: fc.boolean(),
  lineBreak: fc.constantFrom('\n', '\r\n', '\r'),
  closed: fc.boolean(),
  bom: fc.boolean(),
  rows: fc.array(
    fc.oneof(
      {
        weight: 12,
        arbitrary: fc.tuple(fc.integer({ min: -300, max: 900 }), fc.integer({ min: 0, max: 1000 })),
      },
      { weight: 1, arbitrary: fc.constantFrom(...oddLines) },
    ),
    { minLength: 12, maxLength: 60 },
  ),
});

describe('the rows of a log', () => {
  test('are the same by scanning and by reading every cell', () => {
    let scanned = 0;
    fc.assert(
      fc.property(file, ({ clock, quoted, lineBreak, closed, bom, rows }) => {
        const quote = (text: string) => (quoted ? `"${text}"` : text);
        const lines = rows.map((row, i) => {
          if (typeof row === 'string') return row;
          const at = clocks[clock](new Date(Date.UTC(2026, 0, 5, 0, 10 * i)));
          return [at, (row[0] / 10).toFixed(1), (row[1] / 10).toFixed(1)].map(quote).join(';');
        });
        const text = ['Time;Temperature;Humidity', ...lines].join(lineBreak) + (closed ? lineBreak : '');
        const bytes = new TextEncoder().encode(`${bom ? '\ufeff' : ''}${text}`);
        const log = understand('log.csv', bytes, hints());
        if (log.kind === 'no log') return;
        const plan = scanPlanOf(log);
        if (plan !== null) scanned++;
        expect(readRows(log, plan)).toEqual(readRows(log, null));
      }),
      { numRuns: 400 },
    );
    // the fact would be empty if hardly any of the files were plain enough to scan
    expect(scanned).toBeGreaterThan(100);
  });
});
