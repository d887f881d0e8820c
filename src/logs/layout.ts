/** Where the readings begin, what stands above them, and what each column is called. */
import { isNumeric, isReading, spread } from './dialect.ts';
import { namesTime, quantityNamed } from './names.ts';
import { type Delimiter, isComment, type Table } from './table.ts';
import { type TimeColumns, timeOf, usedBy } from './timeColumns.ts';
import { unitNamed } from './units.ts';

export interface Layout {
  /** The header of each column as the file has it; "" where there is none. */
  readonly headers: readonly string[];
  /** What the units row says of each column; "" where there is none. */
  readonly units: readonly string[];
  /** Everything above the header, as it stands. */
  readonly preamble: readonly string[];
  /** The data rows: no comments, no header come again. */
  readonly rows: readonly (readonly string[])[];
  readonly lines: readonly number[];
}

/** `textLines` are the lines of the file as they stand. */
export function layoutOf(
  table: Table,
  columns: TimeColumns,
  delimiter: Delimiter,
  textLines: readonly string[],
): Layout {
  const first = table.rows.findIndex((row) => !isComment(row) && isReading(row, columns));
  if (first < 0) return { headers: [], units: [], preamble: textLines, rows: [], lines: [] };
  let above = first - 1;
  // a logger that starts up may give rows with a time and nothing else: they are data too
  while (above >= 0 && timeOf(table.rows[above], columns) !== null) above--;
  const begin = above + 1;
  const sample = spread(table.rows.slice(begin), 1000).filter(
    (row) => !isComment(row) && isReading(row, columns),
  );
  const width = commonest(sample.map((row) => row.length));

  let units: readonly string[] = [];
  let header: readonly string[] | null = null;
  for (; above >= 0 && header === null; above--) {
    const row = withoutMark(table.rows[above]);
    if (row.every((cell) => /^[-=_+]*$/.test(cell))) continue;
    if (units.length === 0 && isUnitsRow(row)) units = row;
    else {
      header = headerOf(row, textLines[table.lines[above] - 1], width, delimiter);
      if (header === null) break;
    }
  }
  const headers = align(header ?? units, width, sample, columns, delimiter);
  const isRepeat = (row: readonly string[]) =>
    [header ?? [], units].some((it) => it.length > 1 && it.every((cell, at) => cell === row[at]));
  const isData = (row: readonly string[]) => !isComment(row) && !isRepeat(row);
  const kept: number[] = [];
  for (let i = begin; i < table.rows.length; i++) if (isData(table.rows[i])) kept.push(i);
  return {
    headers,
    units: units.length === 0 ? [] : align(units, width, sample, columns, delimiter),
    preamble: textLines.slice(0, table.lines[above + 1] - 1),
    rows: kept.map((i) => table.rows[i]),
    lines: kept.map((i) => table.lines[i]),
  };
}

/** A row without the "#" that marks it as a comment and without trailing empty cells. */
function withoutMark(row: readonly string[]): readonly string[] {
  const bare = (row[0] ?? '').replace(/^#+\s*/, '');
  const cells = row[0]?.startsWith('#') ? [...(bare === '' ? [] : [bare]), ...row.slice(1)] : row;
  return cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1);
}

const isUnitsRow = (row: readonly string[]) => {
  if (row.some((cell) => namesTime(cell) && !/utc|gmt/i.test(cell))) return false;
  const filled = row.filter((cell) => cell !== '' && cell !== '-');
  return filled.length > 0 && filled.filter((cell) => isUnit(cell)).length * 2 >= filled.length;
};

const isUnit = (cell: string) =>
  unitNamed(cell.replace(/^[[(]|[\])]$/g, '')) !== undefined || /^\[.*\]$/.test(cell);

/** The row as a header, or null when it is one of the preamble. */
function headerOf(
  row: readonly string[],
  text: string,
  width: number,
  delimiter: Delimiter,
): readonly string[] | null {
  const known = row.filter((cell) => namesTime(cell) || quantityNamed(cell) !== undefined).length;
  const numbers = row.filter(isNumeric).length;
  if (row.length < 2 || numbers * 2 > row.length) return null;
  if (delimiter === 'blanks' && row.length > width) {
    const spaced = text
      .replace(/^#+\s*/, '')
      .trim()
      .split(/\s{2,}/);
    return spaced.length === width || spaced.length === width - 1 ? spaced : null;
  }
  const fits = row.length === width || row.length === width - 1;
  return fits || known >= 2 ? row : null;
}

/** One name per column, where the header has fewer than the rows have cells. */
function align(
  names: readonly string[],
  width: number,
  sample: readonly (readonly string[])[],
  columns: TimeColumns,
  delimiter: Delimiter,
): readonly string[] {
  const missing = width - names.length;
  if (names.length === 0) return Array.from({ length: width }, () => '');
  if (missing <= 0) return names;
  if (sample.every((row) => (row.at(-1) ?? '') === '')) return padded(names, width);
  // "Time Temperature" over "2026-01-01 00:00 21.5": one name stands over date and time
  if (missing === 1 && columns.kind === 'date and time') {
    const at = Math.min(...usedBy(columns));
    return [...names.slice(0, at + 1), names[at], ...names.slice(at + 1)];
  }
  // tables written with row numbers and no name for them
  if (missing === 1 && !usedBy(columns).includes(0) && sample.every((row) => /^\d+$/.test(row[0] ?? '')))
    return ['', ...names];
  // "21,5" unquoted between commas falls into two cells: take no half for a reading
  if (delimiter === ',' && !sample.some((row) => row.some((cell) => /\d\.\d/.test(cell)))) return names;
  return padded(names, width);
}

const padded = (names: readonly string[], width: number) =>
  Array.from({ length: width }, (_, i) => names[i] ?? '');

function commonest(lengths: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].reduce((best, it) => (it[1] > best[1] ? it : best), [0, 0])[0];
}
