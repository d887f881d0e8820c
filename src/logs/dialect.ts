/** What separates the cells of a file: whatever makes times and numbers of the most of it. */
import { countingColumn } from './elapsed.ts';
import { namesTime, quantityNamed } from './names.ts';
import { readNumber } from './numbers.ts';
import { cellsOf, type Delimiter, isComment } from './table.ts';
import { type TimeColumns, timeColumns, timeOf, usedBy } from './timeColumns.ts';

export type Dialect =
  | { readonly kind: 'found'; readonly delimiter: Delimiter; readonly columns: TimeColumns }
  | { readonly kind: 'no time' }
  /** Numbers under a header beside times that are written in no known way, such as this one. */
  | { readonly kind: 'no clock'; readonly said: string }
  | { readonly kind: 'no numbers' };

/** Tries each separator on lines spread over the file, so that a preamble of any length weighs little. */
export function dialectOf(lines: readonly string[]): Dialect {
  const sample = spread(lines, SAMPLE).filter((line) => line.trim() !== '' && !isComment([line.trim()]));
  const tables = DELIMITERS.map((delimiter) => ({
    delimiter,
    rows: sample.map((line) => cellsOf(line, delimiter)),
  }));
  const dated = best(tables, (rows) => timeColumns(rows, [], {}));
  const counted = best(tables, countingColumn);
  // a date or two in the preamble do not date the rows
  if (counted !== null && counted.score > PREAMBLE_DATES * (dated?.score ?? 0))
    return { kind: 'found', ...counted };
  if (dated !== null) return { kind: 'found', ...dated };
  const unknown = tables.map(({ rows }) => unknownTime(rows)).find((said) => said !== null);
  if (unknown !== undefined && unknown !== null) return { kind: 'no clock', said: unknown };
  const timed = tables.some(({ rows }) => timeColumns(rows, [], {}) !== null || rows.some(isHeader));
  return { kind: timed ? 'no numbers' : 'no time' };
}

/** A cell that is a number, whichever its decimal mark. */
export const isNumeric = (cell: string): boolean =>
  !Number.isNaN(readNumber(cell, '.')) || !Number.isNaN(readNumber(cell, ','));

/** A row that has a time and at least one number beside it. */
export const isReading = (row: readonly string[], columns: TimeColumns): boolean => clarity(row, columns) > 0;

/** At most `most` of the items, evenly spread, the first ones all. */
export function spread<T>(items: readonly T[], most: number): T[] {
  if (items.length <= most) return [...items];
  const head = Math.floor(most / 4);
  const rest = most - head;
  const step = (items.length - head) / rest;
  return [
    ...items.slice(0, head),
    ...Array.from({ length: rest }, (_, i) => items[head + Math.floor(i * step)] as T),
  ];
}

/** The separator and the columns of time that explain the most cells; null when none explains any. */
function best(
  tables: readonly { readonly delimiter: Delimiter; readonly rows: readonly (readonly string[])[] }[],
  columnsIn: (rows: readonly (readonly string[])[]) => TimeColumns | null,
) {
  let found: {
    readonly delimiter: Delimiter;
    readonly columns: TimeColumns;
    readonly score: number;
  } | null = null;
  for (const { delimiter, rows } of tables) {
    // a time alone in its row explains nothing
    if (rows.every((row) => row.length < 2)) continue;
    const columns = columnsIn(rows);
    if (columns === null) continue;
    const score = rows.reduce((sum, row) => sum + clarity(row, columns), 0);
    if (score > (found?.score ?? 0)) found = { delimiter, columns, score };
  }
  return found;
}

/** The first cell under a header of time in a row with a number; null where there is none. */
function unknownTime(rows: readonly (readonly string[])[]): string | null {
  const head = rows.findIndex(isHeader);
  if (head < 0) return null;
  const at = rows[head].findIndex(namesTime);
  const row = rows
    .slice(head + 1)
    .find((it) => (it[at] ?? '') !== '' && it.some((cell, i) => i !== at && isNumeric(cell)));
  return row?.[at] ?? null;
}

/** A log that has only just begun is a header and no rows. */
const isHeader = (row: readonly string[]) => row.some(namesTime) && row.some(quantityNamed);

/** Where two explain a file equally well, the first. */
const DELIMITERS: readonly Delimiter[] = ['\t', ';', ',', '|', 'blanks'];
const SAMPLE = 400;
const PREAMBLE_DATES = 2;

/** Share of the cells that are understood, in a row with a time and a number; else 0. */
function clarity(row: readonly string[], columns: TimeColumns): number {
  if (timeOf(row, columns) === null) return 0;
  const used = usedBy(columns);
  const others = row.filter((_, at) => !used.includes(at));
  const numbers = others.filter(isNumeric).length;
  const empty = others.filter((cell) => cell === '').length;
  return numbers === 0 ? 0 : (numbers + empty + used.length) / row.length;
}
