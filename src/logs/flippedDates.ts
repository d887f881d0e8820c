/** Dates that a spreadsheet turned: those with a day up to 12 read month first among others that read day first. */

/** One date of the file in the order that was taken, and with day and month the other way round. */
export interface TwoWays {
  /** Midnights [s]. */
  readonly taken: number;
  /** The same as `taken` where the date cannot be read the other way. */
  readonly turned: number;
}

/**
 * Whether the record jumps to and fro as its dates were read, and would run on if those that can be read the other
 * way were turned.
 *
 * @param dates  each date once
 * @param dateAt for each row in the order of the file the place of its date; -1 for a row without a time
 */
export function wouldRunOnTurned(dates: readonly TwoWays[], dateAt: Int32Array): boolean {
  if (!dates.some(({ taken, turned }) => taken !== turned)) return false;
  const [taken, turned] = [{ jumps: 0 }, { jumps: 0 }];
  let before = -1;
  for (const at of dateAt) {
    if (at < 0) continue;
    if (before >= 0 && at !== before) {
      if (Math.abs(dates[at].taken - dates[before].taken) > DAY) taken.jumps++;
      if (Math.abs(dates[at].turned - dates[before].turned) > DAY) turned.jumps++;
    }
    before = at;
  }
  return taken.jumps >= FEWEST && turned.jumps * 4 <= taken.jumps;
}

const DAY = 86400;
/** So many jumps are no pauses of the logger. */
const FEWEST = 3;
