/** Rows that a logger stamped with its first date after it lost power: they must not stretch the record. */
import { known } from '../series/known.ts';
import { extentOf } from './extent.ts';

/**
 * The rows whose date lies more than two years from the median, fewer than one in twenty, in runs that go on from one
 * moment as a clock does that began anew. A run of more than 90 days may be an honest older record, and stays.
 *
 * @param shown what the clock showed on each row [s since 1970], in the order of the file; NaN where it has none
 * @return      places of the rows, rising
 */
export function resetRows(shown: Float64Array): number[] {
  const { least, most } = extentOf(shown);
  if (!(most - least > FAR)) return [];
  const sorted = known(shown).sort();
  if (sorted.length < FEWEST_ROWS) return [];
  const middle = sorted[sorted.length >> 1];
  const isFar = (i: number) => Math.abs(shown[i] - middle) > FAR;
  const far = [...shown.keys()].filter(isFar);
  if (far.length >= MOST * sorted.length) return [];
  return runsOf(far, shown).filter(isReset(shown)).flat();
}

/** Rows next to each other in the file, those without a time not counted. */
function runsOf(rows: readonly number[], shown: Float64Array): number[][] {
  const runs: number[][] = [];
  for (const row of rows) {
    const last = runs.at(-1);
    let next = (last?.at(-1) ?? Number.NEGATIVE_INFINITY) + 1;
    while (next < row && Number.isNaN(shown[next])) next++;
    if (last !== undefined && next === row) last.push(row);
    else runs.push([row]);
  }
  return runs;
}

/** One clock that runs on from one moment, forwards or (newest row first) backwards. */
const isReset = (shown: Float64Array) => (run: readonly number[]) => {
  const steps = run.slice(1).map((row, i) => shown[row] - shown[run[i]]);
  const oneWay = steps.every((step) => step >= 0) || steps.every((step) => step <= 0);
  const span = Math.abs(shown[run[run.length - 1]] - shown[run[0]]);
  return oneWay && span < LONGEST_RUN;
};

/** Two years [s]. */
const FAR = 2 * 365.25 * 86400;
/** A clock that ran on wrongly for longer than this is a record to ask about, not a slip [s]. */
const LONGEST_RUN = 90 * 86400;
const MOST = 0.05;
/** Of so few rows one is too many to be called a stray. */
const FEWEST_ROWS = 21;
