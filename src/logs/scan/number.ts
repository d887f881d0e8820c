/** Numbers from bytes, equal to `Number(text)` to the last bit. */
import { MINUS, PLUS, ZERO } from './bytes.ts';

/**
 * Writes the number that fills a cell to `into[row]`.
 *
 * @param from,to the trimmed cell
 * @param decimal byte of the decimal mark
 * @returns false when the cell is not one plain, finite number
 *
 * A whole number up to 2^53 and a power of ten up to 10^22 are both exact as doubles, so that their one division is
 * rounded as the decimal text is: W. D. Clinger, How to read floating point numbers accurately, PLDI 1990,
 * doi:10.1145/93542.93557.
 */
export function numberInto(
  bytes: Uint8Array,
  from: number,
  to: number,
  decimal: number,
  into: Float64Array,
  row: number,
): boolean {
  const negative = bytes[from] === MINUS;
  let whole = 0;
  let mark = -1;
  for (let i = negative ? from + 1 : from; i < to; i++) {
    const digit = bytes[i] - ZERO;
    if (digit >= 0 && digit <= 9) whole = whole * 10 + digit;
    else if (bytes[i] === decimal && mark < 0) mark = i;
    else return slowlyInto(bytes, from, to, decimal, into, row);
  }
  const decimals = mark < 0 ? 0 : to - 1 - mark;
  const digits = to - from - (negative ? 1 : 0) - (mark < 0 ? 0 : 1);
  if (digits === 0 || whole >= EXACT || decimals >= POWERS_OF_TEN.length)
    return slowlyInto(bytes, from, to, decimal, into, row);
  const value = decimals === 0 ? whole : whole / POWERS_OF_TEN[decimals];
  into[row] = negative ? -value : value;
  return true;
}

const EXACT = 2 ** 53;
const POWERS_OF_TEN = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

/** Of digits, signs, "e" and one mark `Number` takes exactly what a logger may write. */
function slowlyInto(
  bytes: Uint8Array,
  from: number,
  to: number,
  decimal: number,
  into: Float64Array,
  row: number,
): boolean {
  let text = '';
  for (let i = from; i < to; i++) {
    const byte = bytes[i];
    if (byte === decimal) text += '.';
    else if ((byte >= ZERO && byte <= ZERO + 9) || byte === PLUS || byte === MINUS || (byte | 32) === 101)
      text += String.fromCharCode(byte);
    else return false;
  }
  const value = text === '' ? Number.NaN : Number(text);
  into[row] = value;
  return Number.isFinite(value);
}
