/** The time of day from bytes: "hh:mm[:ss[.fff]]", then half of the day, then offset from UTC, as far as they are there. */
import {
  A,
  afterBlanks,
  COLON,
  COMMA,
  digitAt,
  G,
  lengthAt,
  M,
  MINUS,
  numberAt,
  P,
  PLUS,
  POINT,
  SMALL,
  T,
  twoDigitsAt,
  U,
  UNDERSCORE,
  Z,
} from './bytes.ts';
import type { RowBatch } from './sink.ts';

/** The place where the time begins after its date: past blanks and one "T", "_" or comma; -1 when nothing is between. */
export function afterGap(bytes: Uint8Array, from: number, to: number): number {
  const at = afterBlanks(bytes, from, to);
  const byte = at < to ? bytes[at] : 0;
  const marked = (byte | SMALL) === T || byte === UNDERSCORE || byte === COMMA;
  const end = marked ? afterBlanks(bytes, at + 1, to) : at;
  return end === from ? -1 : end;
}

/**
 * Writes the time of day that fills a cell from `from` on to the row's `clock` and `offset`.
 * 24:00 ends a day; second 60 is a leap second; 12 AM is midnight; 13 PM is 13:00, which some loggers write.
 *
 * @returns false when it is no time of day
 */
export function clockInto(
  bytes: Uint8Array,
  from: number,
  to: number,
  batch: RowBatch,
  row: number,
): boolean {
  const length = lengthAt(bytes, from, to);
  const shown = numberAt(bytes, from, length, to);
  let at = from + length;
  const minute = twoDigitsAt(bytes, at + 1, to);
  if (shown < 0 || minute < 0 || minute > 59 || bytes[at] !== COLON) return false;
  at += 3;

  let second = 0;
  let fraction = 0;
  if (at < to && bytes[at] === COLON) {
    second = twoDigitsAt(bytes, at + 1, to);
    if (second < 0 || second > (minute === 59 ? 60 : 59)) return false;
    at += 3;
    if (at < to && (bytes[at] === POINT || bytes[at] === COMMA)) {
      const begin = ++at;
      let digits = 0;
      for (let digit = digitAt(bytes, at, to); digit >= 0; digit = digitAt(bytes, ++at, to))
        digits = digits * 10 + digit;
      if (at === begin || at - begin > MOST_DECIMALS) return false;
      fraction = digits / 10 ** (at - begin);
    }
  }

  let hour = shown;
  at = afterBlanks(bytes, at, to);
  const half = at < to ? bytes[at] | SMALL : 0;
  if (half === A || half === P) {
    if (hour > 12 && half === A) return false;
    if (hour <= 12) hour = (hour % 12) + (half === P ? 12 : 0);
    at++;
    if (at < to && bytes[at] === POINT) at++;
    if (at < to && (bytes[at] | SMALL) === M) at++;
    if (at < to && bytes[at] === POINT) at++;
  }
  const time = hour * 3600 + minute * 60 + second + fraction;
  batch.clock[row] = time;
  batch.offset[row] = Number.NaN;
  if (time > 86400) return false;
  return at === to || offsetInto(bytes, afterBlanks(bytes, at, to), to, batch.offset, row);
}

/** "Z", "UTC", "GMT", "+hh", "+hhmm", "+hh:mm", and the last three after UTC or GMT. */
function offsetInto(bytes: Uint8Array, from: number, to: number, into: Float64Array, row: number): boolean {
  let at = from;
  const letter = at < to ? bytes[at] | SMALL : 0;
  into[row] = 0;
  if (letter === Z) return at + 1 === to;
  if (letter === U || letter === G) {
    if (to - at < 3 || !NAMES.has(String.fromCharCode(letter, bytes[at + 1] | SMALL, bytes[at + 2] | SMALL)))
      return false;
    at += 3;
    if (at === to) return true;
  }
  const sign = at < to ? bytes[at] : 0;
  const hours = twoDigitsAt(bytes, at + 1, to);
  if ((sign !== PLUS && sign !== MINUS) || hours < 0) return false;
  at += 3;
  let minutes = 0;
  if (at < to) {
    if (bytes[at] === COLON) at++;
    minutes = twoDigitsAt(bytes, at, to);
    at += 2;
  }
  const offset = hours * 3600 + minutes * 60;
  into[row] = sign === MINUS ? -offset : offset;
  return minutes >= 0 && at === to;
}

const NAMES: ReadonlySet<string> = new Set(['utc', 'gmt']);
/** What the general reader takes. */
const MOST_DECIMALS = 9;
