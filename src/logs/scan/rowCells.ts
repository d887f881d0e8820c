/** Where the cells of a row begin and end. */
import { CARRIAGE_RETURN, isBlank, LINE_FEED, QUOTE, TAB } from './bytes.ts';
import type { ScanPlan } from './plan.ts';

/** The cells of one row after the other, in the same arrays. */
export class RowCells {
  /** Where the row ends: its line break, or the end of the file. */
  end = 0;
  /** The trimmed cells, without their quotes: first byte, and the place after the last. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  private readonly kinds: Uint8Array;
  private readonly width: number;
  private readonly byBlanks: boolean;

  constructor(plan: ScanPlan) {
    this.from = new Int32Array(plan.width);
    this.to = new Int32Array(plan.width);
    this.kinds = kindsOf(plan);
    this.width = plan.width;
    this.byBlanks = plan.delimiter === 'blanks';
  }

  /** Finds the cells of the row that begins at `start`; false when it is not plain or has another width. */
  split(bytes: Uint8Array, start: number): boolean {
    const { kinds, width, byBlanks, from, to } = this;
    const length = bytes.length;
    let cell = 0;
    let at = start;
    for (;;) {
      if (byBlanks) {
        while (at < length && kinds[bytes[at]] === DELIMITER) at++;
        if (at === length || kinds[bytes[at]] === BREAK) break;
      }
      let begin = at;
      let finish: number;
      if (at < length && kinds[bytes[at]] === QUOTED) {
        begin = ++at;
        while (at < length && kinds[bytes[at]] <= DELIMITER) at++;
        finish = at;
        if (at === length || kinds[bytes[at]] !== QUOTED) return this.isOdd(bytes, at);
        at++;
      } else {
        while (at < length && kinds[bytes[at]] === ORDINARY) at++;
        finish = at;
      }
      const kind = at < length ? kinds[bytes[at]] : BREAK;
      if (cell === width || (kind !== DELIMITER && kind !== BREAK)) return this.isOdd(bytes, at);
      while (begin < finish && isBlank(bytes[begin])) begin++;
      while (begin < finish && isBlank(bytes[finish - 1])) finish--;
      from[cell] = begin;
      to[cell++] = finish;
      if (kind === BREAK) break;
      at++;
    }
    this.end = at;
    return cell === width;
  }

  private isOdd(bytes: Uint8Array, at: number): false {
    let end = at;
    while (end < bytes.length && this.kinds[bytes[end]] !== BREAK) end++;
    this.end = end;
    return false;
  }
}

const ORDINARY = 0;
const DELIMITER = 1;
const BREAK = 2;
const QUOTED = 3;
const STRANGE = 4;

/** What each byte means to a row. Bytes outside ASCII may be a kind of blank, so no file in blanks holds them. */
function kindsOf({ delimiter, quotes }: ScanPlan): Uint8Array {
  const kinds = new Uint8Array(256);
  kinds.fill(STRANGE, 0, 32);
  kinds[TAB] = ORDINARY;
  kinds[127] = STRANGE;
  kinds[LINE_FEED] = BREAK;
  kinds[CARRIAGE_RETURN] = BREAK;
  kinds[QUOTE] = quotes ? QUOTED : STRANGE;
  if (delimiter === 'blanks') {
    kinds.fill(STRANGE, 128);
    kinds[TAB] = DELIMITER;
    kinds[32] = DELIMITER;
  } else kinds[delimiter.charCodeAt(0)] = DELIMITER;
  return kinds;
}
