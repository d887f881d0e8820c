/** A sample of a large file: its beginning as it stands, and single lines from all over the rest. */
import { type Encoding, textOf } from './encoding.ts';
import { isBreak } from './scan/index.ts';

export interface SampleLines {
  /** The first lines of the file, whole; all of it where it is small. Line breaks are "\n". */
  readonly head: string;
  /** Lines spread evenly over what follows the head. */
  readonly spread: readonly string[];
}

/** @param headSize the most that the head may hold [bytes] */
export function sampleLines(bytes: Uint8Array, encoding: Encoding, headSize: number): SampleLines {
  if (bytes.length <= headSize) return { head: textOf(bytes, encoding), spread: [] };
  const unit = encoding === 'utf-16le' || encoding === 'utf-16be' ? 2 : 1;
  const isBreakAt = breakIn(bytes, encoding);
  /** Where the line begins that holds the byte before `from`; -1 where it is too long to be a row. */
  const lineStart = (from: number) => {
    let at = from;
    while (at > 0 && !isBreakAt(at - unit)) {
      at -= unit;
      if (from - at > LONGEST) return -1;
    }
    return at;
  };
  const even = (at: number) => at - (at % unit);
  const begun = lineStart(even(headSize));
  const end = begun > 0 ? begun : even(headSize);
  const spread: string[] = [];
  const step = (bytes.length - end) / SPREAD;
  let previous = end - 1;
  for (let i = 1; i <= SPREAD; i++) {
    let stop = lineStart(even(Math.floor(end + i * step)));
    while (stop > end && isBreakAt(stop - unit)) stop -= unit;
    const start = stop > end ? lineStart(stop) : -1;
    if (start <= previous) continue;
    previous = start;
    spread.push(textOf(bytes.subarray(start, stop), encoding));
  }
  return { head: textOf(bytes.subarray(0, end), encoding), spread };
}

function breakIn(bytes: Uint8Array, encoding: Encoding): (at: number) => boolean {
  if (encoding === 'utf-16le') return (at) => bytes[at + 1] === 0 && isBreak(bytes[at]);
  if (encoding === 'utf-16be') return (at) => bytes[at] === 0 && isBreak(bytes[at + 1]);
  return (at) => isBreak(bytes[at]);
}

/** Lines that a guess looks at beyond the head. */
const SPREAD = 750;
/** A longer line is no row [bytes]. */
const LONGEST = 8192;
