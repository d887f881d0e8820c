/** Dates of three numbers from bytes; which number is the year, month or day is settled elsewhere. */
import { digitAt, lengthAt, MINUS, numberAt, POINT, SLASH, twoDigitsAt } from './bytes.ts';
import type { DateShape } from './plan.ts';

/** The shape of the date that a cell begins with; null when the scanner does not read such dates. */
export function dateShapeOf(cell: string): DateShape | null {
  const bytes = new TextEncoder().encode(cell);
  const parts = new Int16Array(3);
  const fits = (shape: DateShape) => dateInto(bytes, 0, bytes.length, shape, parts, 0) > 0;
  return SHAPES.find(fits) ?? null;
}

/**
 * Writes the three numbers of the date that a cell begins with to `into[3 * row]` and the two after it.
 *
 * @returns the place after the date; -1 when it has another shape or is none
 */
export function dateInto(
  bytes: Uint8Array,
  from: number,
  to: number,
  shape: DateShape,
  into: Int16Array,
  row: number,
): number {
  const isYearFirst = shape === 'year first';
  const firstLength = isYearFirst ? 4 : lengthAt(bytes, from, to);
  const first = firstLength === 4 ? yearAt(bytes, from, to) : numberAt(bytes, from, firstLength, to);
  const gap = from + firstLength;
  const separator = gap < to ? bytes[gap] : 0;
  if (separator !== SLASH && separator !== POINT && separator !== MINUS) return -1;

  const secondLength = lengthAt(bytes, gap + 1, to);
  const second = numberAt(bytes, gap + 1, secondLength, to);
  const nextGap = gap + 1 + secondLength;
  if (nextGap >= to || bytes[nextGap] !== separator) return -1;

  const begin = nextGap + 1;
  const thirdLength = shape === 'year last' ? 4 : isYearFirst ? lengthAt(bytes, begin, to) : 2;
  const third = thirdLength === 4 ? yearAt(bytes, begin, to) : numberAt(bytes, begin, thirdLength, to);
  const end = begin + thirdLength;
  if (first < 0 || second < 0 || third < 0 || digitAt(bytes, end, to) >= 0) return -1;
  into[3 * row] = first;
  into[3 * row + 1] = second;
  into[3 * row + 2] = third;
  return end;
}

const SHAPES: readonly DateShape[] = ['year first', 'year last', 'open'];

/** The value of four digits; -1 when there are none. */
function yearAt(bytes: Uint8Array, at: number, to: number): number {
  const century = twoDigitsAt(bytes, at, to);
  const year = twoDigitsAt(bytes, at + 2, to);
  return century < 0 || year < 0 ? -1 : century * 100 + year;
}
