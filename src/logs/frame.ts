/** Where the readings begin, what stands above them, and what each column is called. */
import { isNumeric, isReading } from './dialect.ts';
import { namesTime, quantityNamed } from './names.ts';
import { type Delimiter, isComment, type Table } from './table.ts';
import { type TimeColumns, timeOf, usedBy } from './timeColumns.ts';
import { unitNamed } from './units.ts';

export interface Frame {
  /** The header of each column as the file has it; "" where there is none. */
  readonly headers: readonly string[];
  /** What the units row says of each column; "" where there is none. */
  readonly units: readonly string[];
  /** Everything above the header, as it stands. */
  readonly preamble: readonly string[];
  /** The header and the units row as they stand, for they may come again; empty where there is none. */
  readonly header: readonly string[];
  readonly unitsRow: readonly string[];
  /** Lines of the header and of the first row of data, from 1; null where there is no header. */
  readonly headerLine: number | null;
  readonly firstLine: number;
}

/**
 * The frame of a table by its first rows; null where no row of them is a reading.
 *
 * @param textLines the lines of the file as they stand, as far as the rows go
 * @param sample    readings from all over the file
 */
export function frameOf(
  { rows, lines }: Table,
  columns: TimeColumns,
  delimiter: Delimiter,
  textLines: readonly string[],
  sample: readonly (readonly string[])[],
): Frame | null {
  const first = rows.findIndex((row) => !isComment(row) && isReading(row, columns));
  if (first < 0) return null;
  let above = first - 1;
  // a logger that starts up may give rows with a time and nothing else: they are data too
  while (above >= 0 && timeOf(rows[above], columns) !== null) above--;
  const firstLine = lines[above + 1];
  const width = commonest(sample.map((row) => row.length));

  let unitsRow: readonly string[] = [];
  let header: readonly string[] | null = null;
  let headerLine: number | null = null;
  for (; above >= 0 && header === null; above--) {
    const row = withoutMark(rows[above]);
    if (row.every((cell) => /^[-=_+]*$/.test(cell))) continue;
    if (unitsRow.length === 0 && isUnitsRow(row)) unitsRow = row;
    else {
      header = headerOf(row, textLines[lines[above] - 1] ?? '', width, delimiter);
      if (header === null) break;
      headerLine = lines[above];
    }
  }
  const shape = { width, sample, columns, delimiter };
  const bare = align(header ?? unitsRow, shape);
  const over = above >= 0 && header !== null ? upperLevel(rows[above], bare, columns) : null;
  if (over !== null) above--;
  return {
    headers: over ?? bare,
    units: unitsRow.length === 0 ? [] : align(unitsRow, shape),
    preamble: textLines.slice(0, lines[above + 1] - 1),
    header: header ?? [],
    unitsRow,
    headerLine,
    firstLine,
  };
}

/** A row without the sign that marks it as a comment and without trailing empty cells. */
function withoutMark(row: readonly string[]): readonly string[] {
  const bare = (row[0] ?? '').replace(MARK, '');
  const cells = MARK.test(row[0] ?? '') ? [...(bare === '' ? [] : [bare]), ...row.slice(1)] : row;
  return cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1);
}

const MARK = /^(#+|\/\/+|!+)\s*/;

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
      .replace(MARK, '')
      .trim()
      .split(/\s{2,}/);
    return spaced.length === width || spaced.length === width - 1 ? spaced : null;
  }
  if (row.length > width) return known >= 2 ? unitsJoined(row, width) : null;
  return row.length >= width - 1 || known >= 2 ? row : null;
}

/** "Time, GMT+1" and "Temp, °C" fell apart at their commas: each unit goes back to its name where that fits the rows. */
function unitsJoined(row: readonly string[], width: number): readonly string[] {
  const joined: string[] = [];
  for (const cell of row) {
    const name = joined.at(-1);
    const isPart = ZONE.test(cell) || (isUnit(cell) && quantityNamed(cell) === undefined);
    if (name !== undefined && isPart) joined[joined.length - 1] = `${name}, ${cell}`;
    else joined.push(cell);
  }
  return joined.length === width ? joined : row;
}

const ZONE = /^(utc|gmt)\s*([-+]\s?\d{1,2}(:?\d\d)?)?$/i;

/** Names that stand over groups of columns, where the names below them say the same again in each group. */
function upperLevel(
  row: readonly string[],
  names: readonly string[],
  columns: TimeColumns,
): readonly string[] | null {
  const twice = new Set(names).size < names.filter((name) => name !== '').length;
  const filled = row.filter((cell) => cell !== '');
  if (!twice || row.length < names.length - 1 || filled.length < 2 || filled.some(isNumeric)) return null;
  let group = '';
  return names.map((name, at) => {
    group = row[at] || group;
    return usedBy(columns).includes(at) ? name : `${group} ${name}`.trim();
  });
}

interface Shape {
  readonly width: number;
  readonly sample: readonly (readonly string[])[];
  readonly columns: TimeColumns;
  readonly delimiter: Delimiter;
}

/** One name per column, where the header has fewer than the rows have cells. */
function align(names: readonly string[], { width, sample, columns, delimiter }: Shape): readonly string[] {
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
