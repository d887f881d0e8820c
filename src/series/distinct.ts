/** The different values of a series: a logger shows some hundreds, however often it is read. */
import { known } from './known.ts';

/** The values, the smallest first: each once where they are few, else all as often as they come; NaN is left out. */
export function distinctOf(values: Float64Array): Float64Array {
  const table = new Float64Array(PLACES).fill(Number.NaN);
  const bits = new Int32Array(values.buffer, values.byteOffset, 2 * values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    if (Number.isNaN(value)) continue;
    const mixed = Math.imul(bits[2 * i] ^ Math.imul(bits[2 * i + 1], 0x9e3779b1), 0x85ebca6b);
    let place = (mixed ^ (mixed >>> 15)) & (PLACES - 1);
    while (!Number.isNaN(table[place]) && table[place] !== value) place = (place + 1) & (PLACES - 1);
    if (table[place] === value) continue;
    table[place] = value;
    if (2 * ++count > PLACES) return known(values).sort();
  }
  return known(table).sort();
}

/** Of the table that the values are looked up in, from a place that hangs on their bits: a power of two. */
const PLACES = 1 << 14;
