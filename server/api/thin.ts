/** Thinning by minimum and maximum: no reading is skipped, each widens the interval that it falls into. */

/** Interval i reaches from start + i·step up to, not including, start + (i + 1)·step [s]. */
export interface Intervals {
  readonly start: number;
  readonly step: number;
  readonly count: number;
}

/** What falls into the intervals, in the order of time: readings, or summaries of hours. */
export interface Samples {
  /** [s] */
  readonly time: Float64Array;
  /** NaN for what is not known. */
  readonly min: Float64Array;
  readonly max: Float64Array;
}

/** Intervals this long or longer begin on the hour and are whole hours, so that hourly summaries fill them [s]. */
export const HOUR = 3600;
/** The same of days, UTC, from two days on [s]. */
export const DAY = 86_400;

/** At most `points` intervals of whole seconds, hours or days that hold both instants [s]. */
export function intervalsOver(from: number, to: number, points: number): Intervals {
  const least = (to - from) / points;
  const unit = least >= 2 * DAY ? DAY : least >= HOUR ? HOUR : 1;
  for (let step = Math.max(unit, Math.ceil(least / unit) * unit); ; step += unit) {
    const start = Math.floor(from / step) * step;
    const count = Math.floor((to - start) / step) + 1;
    if (count <= points) return { start, step, count };
  }
}

/** Whether hourly summaries fill the intervals, or even daily ones. */
export const isCoarse = ({ step }: Intervals) => step % HOUR === 0;
export const isCoarsest = ({ step }: Intervals) => step % DAY === 0;

/** The middle of each interval [s]. */
export const middles = ({ start, step, count }: Intervals): number[] =>
  Array.from({ length: count }, (_, i) => start + (i + 0.5) * step);

/** The least and greatest value of each interval, NaN where there is a gap. */
export interface Thinned {
  readonly min: Float64Array;
  readonly max: Float64Array;
}

/**
 * Takes samples in the order of time, piece by piece, each widening its interval; those outside the intervals serve as
 * the ends of lines only. An interval that merely lies between two samples no further apart than `longest` is no gap: it gets the
 * straight line between them.
 *
 * @param longest [s]
 */
export function thinner({ start, step, count }: Intervals, longest: number) {
  const min = new Float64Array(count).fill(Number.NaN);
  const max = new Float64Array(count).fill(Number.NaN);
  let [lastTime, lastMiddle] = [Number.NEGATIVE_INFINITY, 0];
  const widen = (i: number, low: number, high: number) => {
    if (i < 0 || i >= count) return;
    if (!(min[i] <= low)) min[i] = low;
    if (!(max[i] >= high)) max[i] = high;
  };
  const add = (samples: Samples, from = 0, to = samples.time.length) => {
    // Numbers of its own, and no more divisions than needed: millions of samples pass here.
    let i = -1;
    let end = Number.NEGATIVE_INFINITY; // of interval i
    let before = lastTime;
    let middleBefore = lastMiddle;
    for (let k = from; k < to; k++) {
      const low = samples.min[k];
      if (Number.isNaN(low)) continue;
      const high = samples.max[k];
      const time = samples.time[k];
      if (time >= end) {
        i = Math.floor((time - start) / step);
        end = start + (i + 1) * step;
      }
      const middle = (low + high) / 2;
      if (time - before <= longest) {
        const first = Math.max(0, Math.floor((before - start) / step) + 1);
        for (let between = first; between < Math.min(i, count); between++) {
          const share = (start + (between + 0.5) * step - before) / (time - before);
          const value = middleBefore + (middle - middleBefore) * share;
          widen(between, value, value);
        }
      }
      widen(i, low, high);
      before = time;
      middleBefore = middle;
    }
    [lastTime, lastMiddle] = [before, middleBefore];
  };
  return { add, thinned: { min, max } as Thinned };
}

/** All samples at once. */
export function thin(samples: Samples, intervals: Intervals, longest: number): Thinned {
  const { add, thinned } = thinner(intervals, longest);
  add(samples);
  return thinned;
}
