/** Thinning by minimum and maximum: no reading is skipped, each widens the interval that it falls into. */

/** Interval i reaches from start + i·step up to, not including, start + (i + 1)·step [s]. */
export interface Intervals {
  readonly start: number;
  readonly step: number;
  readonly count: number;
}

/** What falls into one interval: a reading, or the summary of an hour. */
export interface Sample {
  /** [s] */
  readonly time: number;
  readonly min: number;
  readonly max: number;
}

/** Intervals this long or longer begin on the hour and are whole hours, so that hourly summaries fill them [s]. */
const HOUR = 3600;

/** At most `points` intervals of whole seconds, or of whole hours, that hold both instants [s]. */
export function intervalsOver(from: number, to: number, points: number): Intervals {
  const unit = (to - from) / points >= HOUR ? HOUR : 1;
  for (let step = Math.max(unit, Math.ceil((to - from) / points / unit) * unit); ; step += unit) {
    const start = Math.floor(from / step) * step;
    const count = Math.floor((to - start) / step) + 1;
    if (count <= points) return { start, step, count };
  }
}

/** The middle of each interval [s]. */
export const middles = ({ start, step, count }: Intervals): number[] =>
  Array.from({ length: count }, (_, i) => start + (i + 0.5) * step);

/**
 * The least and greatest value of each interval, null where there is a gap. An interval that merely lies between
 * two readings no further apart than `longest` is no gap: it gets the straight line between them.
 *
 * @param samples in the order of time; those outside the intervals serve as the ends of lines only
 * @param longest [s]
 */
export function thin(samples: Iterable<Sample>, intervals: Intervals, longest: number) {
  const { start, step, count } = intervals;
  const min = Array<number | null>(count).fill(null);
  const max = Array<number | null>(count).fill(null);
  const widen = (i: number, low: number, high: number) => {
    if (i < 0 || i >= count) return;
    min[i] = Math.min(min[i] ?? low, low);
    max[i] = Math.max(max[i] ?? high, high);
  };
  let before: Sample | null = null;
  for (const sample of samples) {
    const i = Math.floor((sample.time - start) / step);
    if (before !== null && sample.time - before.time <= longest) {
      const last = Math.floor((before.time - start) / step);
      for (let between = Math.max(0, last + 1); between < Math.min(i, count); between++) {
        const value = onLine(before, sample, start + (between + 0.5) * step);
        widen(between, value, value);
      }
    }
    widen(i, sample.min, sample.max);
    before = sample;
  }
  return { min, max };
}

function onLine(a: Sample, b: Sample, time: number): number {
  const [from, to] = [(a.min + a.max) / 2, (b.min + b.max) / 2];
  return from + ((to - from) * (time - a.time)) / (b.time - a.time);
}
