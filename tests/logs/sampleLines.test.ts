/** Files too large to be looked at whole before their rows are read. */
import { describe, expect, test } from 'vitest';
import type { Encoding } from '../../src/logs/encoding.ts';
import { sampleLines } from '../../src/logs/sampleLines.ts';
import { understand } from '../../src/logs/understand.ts';
import { channelsOf, codesOf, hints, read } from './reading.ts';

const rows = Array.from({ length: 20_000 }, (_, i) => {
  const at = new Date(Date.UTC(2026, 0, 3, 0, 10 * i)).toISOString();
  const [date, time] = [at.slice(0, 10).split('-'), at.slice(11, 16)];
  return `${date[1]}/${date[2]}/${date[0]} ${time};${(20 + (i % 50) / 10).toFixed(1)}`;
});
const preamble = Array.from({ length: 9_000 }, (_, i) => `Remark ${i} of a very talkative logger, made up`);
const file = ['Logger;Loft °', ...preamble, 'Time;Temperature °C', ...rows, ''];

const bytesOf: Readonly<Record<Encoding, (text: string) => Uint8Array>> = {
  'utf-8': (text) => new TextEncoder().encode(text),
  'utf-16le': (text) => Buffer.from(text, 'utf16le'),
  'utf-16be': (text) => Buffer.from(text, 'utf16le').swap16(),
  'windows-1252': (text) => Buffer.from(text, 'latin1'),
};
const encodings = Object.keys(bytesOf) as Encoding[];
const breaks = [
  ['\n', 'LF'],
  ['\r\n', 'CRLF'],
  ['\r', 'CR'],
] as const;
const ways = encodings.flatMap((encoding) => breaks.map(([mark, name]) => ({ encoding, mark, name })));

describe('sampleLines', () => {
  test.each(ways)('takes whole lines only, in $encoding with $name', ({ encoding, mark }) => {
    const bytes = bytesOf[encoding](file.join(mark));
    const { head, spread } = sampleLines(bytes, encoding, 50_001);
    const lines = new Set(file);
    expect(file.join('\n').startsWith(head)).toBe(true);
    expect(spread.length).toBeGreaterThan(700);
    expect(spread.filter((line) => !lines.has(line))).toEqual([]);
    expect(new Set(spread).size).toBe(spread.length);
  });
});

describe('a log behind a preamble larger than the first look', () => {
  test.each(ways)('is read whole, in $encoding with $name', ({ encoding, mark }) => {
    const bytes = bytesOf[encoding](file.join(mark));
    const log = understand('log.csv', bytes, hints());
    expect(log).toMatchObject({
      kind: 'log',
      understood: {
        encoding,
        headerLine: 9002,
        preamble: { logger: 'Loft °' },
        clock: { order: 'month-first', orderBy: 'the whole file' },
        sample: [{ line: 9003 }, { line: 9004 }, { line: 9005 }],
      },
    });
    expect(read(bytes).rows).toBe(20_000);
  });

  test('has the instants and values of its first and its last row', () => {
    const reading = read(file.join('\n'));
    const [[, , times, values]] = channelsOf(reading);
    expect(codesOf(reading)).toEqual([]);
    expect([times[0], values[0]]).toEqual(['2026-01-03T00:00:00Z', 20]);
    // 19 999 steps of 10 minutes are 138 days, 21 hours and 10 minutes
    expect([times.at(-1), values.at(-1)]).toEqual(['2026-05-21T21:10:00Z', 24.9]);
  });
});
