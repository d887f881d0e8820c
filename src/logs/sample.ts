/** What separates a file's cells, where its readings begin, and a sample of them. */
import { dialectOf, isReading, spread } from './dialect.ts';
import { type Encoding, withoutLeadingNuls } from './encoding.ts';
import { type Frame, frameOf } from './frame.ts';
import { sampleLines } from './sampleLines.ts';
import { cellsOf, type Delimiter, isComment, tableOf } from './table.ts';
import type { TimeColumns } from './timeColumns.ts';

export type Sample =
  | {
      readonly kind: 'found';
      readonly delimiter: Delimiter;
      readonly columns: TimeColumns;
      readonly frame: Frame;
      /** Rows with a time and a number: the first ones, and others spread over the file. */
      readonly sample: readonly (readonly string[])[];
      /** The first three rows of data as they stand. */
      readonly first: readonly { readonly line: number; readonly cells: readonly string[] }[];
    }
  | { readonly kind: 'no time' }
  | { readonly kind: 'no clock'; readonly said: string }
  | { readonly kind: 'no numbers' };

/** The head of the file is widened until it holds a reading. */
export function sampleOf(bytes: Uint8Array, encoding: Encoding): Sample {
  for (let size = HEAD; ; size *= 4) {
    const { head, spread: lines } = sampleLines(bytes, encoding, size);
    const text = withoutLeadingNuls(head);
    const textLines = text.split('\n');
    const dialect = dialectOf([...textLines, ...lines]);
    if (dialect.kind !== 'found') return dialect;
    const { delimiter, columns } = dialect;
    const table = tableOf(text, delimiter);
    const rows = [...table.rows, ...lines.map((line) => cellsOf(line, delimiter))];
    const isData = (row: readonly string[]) => !isComment(row) && isReading(row, columns);
    const sample = spread(rows.filter(isData), SAMPLE);
    const frame = frameOf(table, columns, delimiter, textLines, sample);
    const whole = size >= bytes.length;
    if (frame !== null) {
      const first = table.rows
        .map((cells, i) => ({ line: table.lines[i], cells }))
        .filter(({ line, cells }) => line >= frame.firstLine && !isComment(cells))
        .slice(0, 3);
      return { kind: 'found', delimiter, columns, frame, sample, first };
    }
    if (whole) return { kind: 'no numbers' };
  }
}

/** The first look at a file [bytes]. */
const HEAD = 1 << 16;
/** Rows that a guess looks at. */
const SAMPLE = 1000;
