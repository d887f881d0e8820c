/** Times that count from a start: elapsed seconds, minutes or hours, or the numbers of the samples. */
import { durationIn, secondsPer } from './durationNamed.ts';
import { namesTime, plainName } from './names.ts';

export interface Elapsed {
  readonly kind: 'elapsed';
  readonly at: number;
  readonly counts: 'time' | 'samples';
  /** What the clock showed at a count of `first` [s since 1970, as if UTC]. */
  readonly start: number;
  /** Offset of the start from UTC [s]; NaN where none is stated. */
  readonly offset: number;
  /** [s] of one count. */
  readonly per: number;
  readonly first: number;
}

type Row = readonly string[];

/** The column that counts, before anything is known of what and since when; null when none does. */
export function countingColumn(rows: readonly Row[]): Elapsed | null {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  for (let at = 0; at < width; at++) {
    const counts = rows.map((row) => countOf(row[at] ?? '', 1)).filter((count) => !Number.isNaN(count));
    const rises = counts.filter((count, i) => i > 0 && count > counts[i - 1]).length;
    if (counts.length >= FEWEST && rises >= MOSTLY * (counts.length - 1))
      return { kind: 'elapsed', at, counts: 'time', start: 0, offset: Number.NaN, per: 1, first: 0 };
  }
  return null;
}

/** Whether the header of a counting column speaks of time, so that only the start is wanting. */
export const namesElapsed = (header: string): boolean =>
  namesTime(header) || ELAPSED.test(plainName(header)) || secondsPer(header) !== null;

/**
 * What one count is worth: by the unit that its header names or its cells show, else by the interval that the
 * preamble states; null when nothing tells.
 *
 * @param interval what the preamble says [s]; null when it is silent
 */
export function worthOf(
  header: string,
  cells: readonly string[],
  interval: number | null,
): Pick<Elapsed, 'counts' | 'per' | 'first'> | null {
  const elapsed = { counts: 'time', first: 0 } as const;
  const counts = cells.map((cell) => countOf(cell, 1)).filter((count) => !Number.isNaN(count));
  const step = (counts[1] ?? Number.NaN) - counts[0];
  const [first] = counts;
  // "18:00", "18:10" are times of day without their dates
  if (cells.some((cell) => cell.includes(':'))) return first <= 2 * step ? { ...elapsed, per: 1 } : null;
  const named = SAMPLES.test(plainName(header)) ? null : secondsPer(header);
  if (named !== null) return { ...elapsed, per: named };
  if (interval === null) return null;
  if (ELAPSED.test(plainName(header)) || namesTime(header)) {
    const per = [1, 60, 3600, 86400].find((unit) => Math.abs(step * unit - interval) < 0.01 * interval);
    return per === undefined ? null : { ...elapsed, per };
  }
  return first === 0 || first === 1 ? { counts: 'samples', per: interval, first } : null;
}

/** Seconds since the start of a cell; NaN where it is no count. */
export const countOf = (cell: string, per: number): number =>
  /^\d/.test(cell) && !/[a-z]/i.test(cell) ? durationIn(cell, per) : Number.NaN;

const ELAPSED =
  /elaps|laufzeit|verstrich|transcurrid|ecoule|trascors|verstreken|\brun ?time\b|since start|^t$/;
const SAMPLES =
  /sampl|scan|record|reading|messung|muestra|mesure|campione|meting|^(n|no|nr|num|number|index|id)$/;
const FEWEST = 3;
const MOSTLY = 0.95;
