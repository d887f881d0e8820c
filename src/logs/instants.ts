/** From what the clock showed to instants: time zone, clock changes, and a clock that is off. */
import type { Clock } from './clock.ts';
import { passesOf, usualSpacing } from './doubledHour.ts';
import { extentOf } from './extent.ts';
import { mark, newTally, type Tally } from './tally.ts';
import { instantsOf, type PlainSpan, plainSpanAt, zoneBetween } from './zone.ts';

export interface RowTimes {
  /** True time of each row [s since 1970 UTC]; NaN where it has none. */
  readonly instants: Float64Array;
  /** The file runs from the newest row to the oldest. */
  readonly newestFirst: boolean;
  /** Rows whose local time the spring change leaves out. */
  readonly missing: Tally;
  /** First rows of doubled hours that the record runs through only once. */
  readonly once: Tally;
}

/**
 * The instant of every row. A row without an offset of its own is in local time; in the doubled hour of autumn
 * the order of the rows tells: until the clock goes back it is the first pass, from then on the second. Where it
 * never goes back, for the record begins or pauses within the hour, the usual spacing of the rows tells.
 *
 * @param lines       line of each row
 * @param isSame      whether two rows hold the same readings
 * @param clockOffset added to the file's clock [s]
 * @throws RangeError if there is no such zone
 */
export function rowTimes(
  { shown, offset }: Clock,
  lines: Int32Array,
  isSame: (i: number, j: number) => boolean,
  { timeZone, clockOffset }: { readonly timeZone: string; readonly clockOffset: number },
): RowTimes {
  const instants = new Float64Array(shown.length).fill(Number.NaN);
  const missing = newTally();
  const once = newTally();
  const newestFirst = runsBackwards(shown);
  const { least, most } = extentOf(shown);
  const zone = zoneBetween(timeZone, Number.isFinite(least) ? least : 0, Number.isFinite(most) ? most : 0);
  let plain: PlainSpan = { from: 0, to: 0, offset: 0 };
  let previous = -1;
  let hour: DoubledHour | null = null;
  let spacing: number | null = null;
  /** The hour is over with this row, or with the file (-1). */
  const close = ({ rows, pass, longer, row, before, beforeAt }: DoubledHour, next: number) => {
    if (pass === 2) return;
    spacing ??= usualSpacing(shown);
    const passes = passesOf(
      rows.map((i) => instants[i]),
      beforeAt,
      next < 0 ? Number.NaN : instants[next],
      longer,
      spacing,
    );
    for (const i of rows.slice(passes.from)) instants[i] += longer;
    const runsThrough =
      next >= 0 && shown[next] > shown[rows[rows.length - 1]] && shown[next] - before < LONGEST_PASS;
    if (runsThrough && !passes.isWhole) mark(once, lines[row]);
  };
  for (let k = 0; k < shown.length; k++) {
    const i = newestFirst ? shown.length - 1 - k : k;
    const local = shown[i];
    if (Number.isNaN(local)) continue;
    if (!Number.isNaN(offset[i])) {
      instants[i] = local - offset[i] + clockOffset;
      continue;
    }
    if (hour === null && local >= plain.from && local < plain.to) {
      instants[i] = local - plain.offset + clockOffset;
      previous = i;
      continue;
    }
    const at = instantsOf(zone, local);
    plain = plainSpanAt(zone, at.span);
    const before = previous < 0 ? Number.NaN : shown[previous];
    if (at.count === 2) {
      const longer = at.second - at.first;
      if (hour === null || hour.span !== at.span) {
        if (hour !== null) close(hour, -1);
        const beforeAt = previous < 0 ? Number.NaN : instants[previous];
        hour = { span: at.span, longer, row: i, rows: [], before, beforeAt, pass: 1 };
      }
      hour.rows.push(i);
      const goesBack =
        local < before || (local === before && local - hour.before >= longer && !isSame(i, previous));
      if (goesBack && hour.row !== i) hour.pass = 2;
      instants[i] = (hour.pass === 1 ? at.first : at.second) + clockOffset;
    } else {
      if (at.count === 0) mark(missing, lines[i]);
      instants[i] = at.first + clockOffset;
      if (hour !== null) close(hour, i);
      hour = null;
    }
    previous = i;
  }
  if (hour !== null) close(hour, -1);
  return { instants, newestFirst, missing, once };
}

/** A doubled hour as the rows run through it. */
interface DoubledHour {
  readonly span: number;
  /** How much later the second pass is [s]. */
  readonly longer: number;
  /** Its first row, and all of them. */
  readonly row: number;
  readonly rows: number[];
  /** What the clock showed on the row before it [s]; NaN at the beginning of a file. */
  readonly before: number;
  /** The instant of that row [s]. */
  readonly beforeAt: number;
  pass: 1 | 2;
}

/** A record that takes no longer than this from before the doubled hour to after it runs through it [s]. */
const LONGEST_PASS = 4 * 3600;

/** More steps back than forth. */
function runsBackwards(times: Float64Array): boolean {
  let steps = 0;
  let last = Number.NaN;
  for (let i = 0; i < times.length; i++) {
    if (Number.isNaN(times[i])) continue;
    if (times[i] > last) steps++;
    else if (times[i] < last) steps--;
    last = times[i];
  }
  return steps < 0;
}
