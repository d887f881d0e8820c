/** The ASCII bytes that the scanner looks for. */
export const TAB = 9;
export const LINE_FEED = 10;
export const CARRIAGE_RETURN = 13;
export const BLANK = 32;
export const QUOTE = 34;
export const HASH = 35;
export const PLUS = 43;
export const COMMA = 44;
export const MINUS = 45;
export const POINT = 46;
export const SLASH = 47;
export const ZERO = 48;
export const COLON = 58;
export const UNDERSCORE = 95;
/** Turns an ASCII capital into its small letter. */
export const SMALL = 32;
/** Small letters. */
export const A = 97;
export const E = 101;
export const G = 103;
export const M = 109;
export const P = 112;
export const T = 116;
export const U = 117;
export const Z = 122;

export const isBlank = (byte: number): boolean => byte === BLANK || byte === TAB;

/** The value of a digit at a place before `to`; -1 when there is none. */
export function digitAt(bytes: Uint8Array, at: number, to: number): number {
  const digit = at < to ? bytes[at] - ZERO : -1;
  return digit >= 0 && digit <= 9 ? digit : -1;
}

/** The value of two digits; -1 when there are none. */
export function twoDigitsAt(bytes: Uint8Array, at: number, to: number): number {
  if (at + 2 > to) return -1;
  const tens = bytes[at] - ZERO;
  const ones = bytes[at + 1] - ZERO;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : -1;
}

/** How many digits a number of one or two has that begins at a place. */
export const lengthAt = (bytes: Uint8Array, at: number, to: number): 1 | 2 =>
  digitAt(bytes, at + 1, to) < 0 ? 1 : 2;

/** The value of one or two digits; -1 when there are none. */
export const numberAt = (bytes: Uint8Array, at: number, length: 1 | 2, to: number): number =>
  length === 1 ? digitAt(bytes, at, to) : twoDigitsAt(bytes, at, to);

/** The first place from `at` that is no blank, or `to`. */
export function afterBlanks(bytes: Uint8Array, at: number, to: number): number {
  let i = at;
  while (i < to && isBlank(bytes[i])) i++;
  return i;
}

export const isBreak = (byte: number): boolean => byte === LINE_FEED || byte === CARRIAGE_RETURN;

/** The place after the line break at `at`: two bytes on over a CRLF. */
export const afterBreak = (bytes: Uint8Array, at: number): number =>
  bytes[at] === CARRIAGE_RETURN && bytes[at + 1] === LINE_FEED ? at + 2 : at + 1;

/** The next line break from a place on, or the end of the file. */
export function lineEnd(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at < bytes.length && !isBreak(bytes[at])) at++;
  return at;
}

/** How many lines end between two places. */
export function breaksBetween(bytes: Uint8Array, from: number, to: number): number {
  let count = 0;
  for (let at = from; at < to; at = afterBreak(bytes, at)) if (isBreak(bytes[at])) count++;
  return count;
}
