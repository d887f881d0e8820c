/** Which rows below the header are data: comments and headers that come again are not. */
import type { Frame } from './frame.ts';
import { namesTime, quantityNamed } from './names.ts';
import { isComment } from './table.ts';
import { mark, newTally, type Tally } from './tally.ts';

export interface RowFilter {
  /** The cells of a row in the order of the headers; null when it is no data. */
  dataOf(row: readonly string[], line: number): readonly string[] | null;
  /** Whether the columns of the rows that follow stand in another order than at first. */
  isMoved(): boolean;
  /** Headers that came again with their columns in another order. */
  readonly moved: Tally;
  /** Columns that only a later header has, by name: nothing is read of them. */
  strangers(): readonly string[];
}

export function rowFilter(frame: Frame): RowFilter {
  const moved = newTally();
  const strangers = new Set<string>();
  let order: Order | null = null;
  return {
    dataOf(row, line) {
      if (isComment(row)) return null;
      if (!isHeaderAgain(row, frame)) return order === null ? row : inOrder(row, order);
      order = orderOf(row, frame);
      if (order === null) return null;
      mark(moved, line);
      for (const name of row) if (name !== '' && !frame.header.includes(name)) strangers.add(name);
      return null;
    },
    isMoved: () => order !== null,
    moved,
    strangers: () => [...strangers],
  };
}

/** The header or the units row come again, or another header; a row of numbers is told in its first cell. */
function isHeaderAgain(row: readonly string[], { header, unitsRow }: Frame): boolean {
  if (header.length < 2 && unitsRow.length < 2) return false;
  for (const cell of row) if (cell !== '' && STARTS_AS_NUMBER.test(cell)) return false;
  const same = (it: readonly string[]) => it.length > 1 && it.every((cell, at) => cell === (row[at] ?? ''));
  if (same(header) || same(unitsRow)) return true;
  const known = row.filter((cell) => namesTime(cell) || quantityNamed(cell) !== undefined).length;
  return known >= 2 && row.some((cell) => header.includes(cell) && namesTime(cell));
}

const STARTS_AS_NUMBER = /^[-+.]?\d/;

interface Order {
  /** For each column of the first header its place in the later one; -1 where it is gone. */
  readonly places: readonly number[];
  readonly width: number;
}

/** Null where no column has moved. */
function orderOf(row: readonly string[], { header, headers }: Frame): Order | null {
  if (header.every((name, at) => name === (row[at] ?? ''))) return null;
  const { length: width } = row;
  // names that do not stand over their cells one by one cannot be followed: these rows are left without a time
  if (!headers[header.length - 1].endsWith(header[header.length - 1])) return { places: [-1], width };
  const taken = new Set<number>();
  const places = header.map((name) => {
    const at = row.findIndex((cell, i) => cell === name && !taken.has(i));
    taken.add(at);
    return at;
  });
  return { places, width };
}

/** The cells by the first header; behind them what is too much, so that a ragged row stays one. */
const inOrder = (row: readonly string[], { places, width }: Order): readonly string[] => [
  ...places.map((at) => row[at] ?? ''),
  ...row.slice(width),
];
