/** By how much the clock of one logger is off against that of another that sees the same. */
import { type Grid, indexAt } from '../series/grid.ts';
import { blocksOf, meanOf, peakOf, summit } from './correlations.ts';
import type { ClockError } from './finding.ts';
import { medianOf, quantileOf } from './scene.ts';
import type { ReadClock } from './sensed.ts';

const HOUR = 3600;
const DAY = 86_400;
/** [s] The furthest that clocks are compared apart, and nearer than which they agree. */
const FURTHEST = 12.5 * HOUR;
export const SAME = 1800;
/** [s] Blocks that must agree among each other, each judged alone. */
const BLOCK = 2 * DAY;
const FEWEST_BLOCKS = 4;
/** Of the blocks, how many must be within `SAME` of their median; and of the whole, the correlation at the shift. */
const AGREEING = 0.6;
const LEAST_CORRELATION = 0.4;
/** How much of it may be there without the shift, and at any other well away from it. */
const MOST_WITHOUT = 0.75;
const MOST_ELSEWHERE = 0.7;
/** [s] */
const AWAY = 1.5 * HOUR;
/** [–] A change larger than this quantile counts as that: one opened window is not the whole record. */
const CLIPPED = 0.995;

export interface Course {
  readonly clock: ReadClock;
  /** False for a weather station: its clock is compared with, not asked about here. */
  readonly asked: boolean;
  /** [s] Between readings. */
  readonly spacing: number;
  /** On the grid of the scene [°C]. */
  readonly temperature: Float64Array;
}

/** One part of the record, between two changes of the clocks [s], and what the courses do in it. */
export interface Part {
  readonly span: { readonly from: number; readonly to: number };
  readonly grid: Grid;
  /** The irregular changes of a course, over so many cells. */
  changes(course: Course, width: number): Float64Array;
}

/** Each course's changes are worked out once, however many others it is compared with. */
export function partOf(span: Part['span'], grid: Grid): Part {
  const first = Math.max(0, indexAt(grid, span.from));
  const beyond = Math.min(grid.length, indexAt(grid, span.to) + 1);
  const known = new Map<Course, Map<number, Float64Array>>();
  return {
    span,
    grid,
    changes(course, width) {
      const own = known.get(course) ?? new Map<number, Float64Array>();
      const changes =
        own.get(width) ?? irregularChanges(course.temperature.subarray(first, beyond), grid, width);
      known.set(course, own.set(width, changes));
      return changes;
    },
  };
}

export type PartShift = ClockError & { readonly correlationNow: number; readonly correlationThen: number };

/** What to add to b's clock to agree with a's; null where the two do not speak clearly in this part of the record. */
export function partShift(a: Course, b: Course, part: Part): PartShift | null {
  const { step } = part.grid;
  const slower = Math.max(a.spacing, b.spacing);
  const width = Math.max(1, Math.round(slower / step));
  const [x, y] = [part.changes(a, width), part.changes(b, width)];
  const reach = Math.round(FURTHEST / step);
  const near = Math.round(SAME / step);
  const blocks = blocksOf(x, y, Math.round(BLOCK / step), reach);
  if (blocks.length < FEWEST_BLOCKS) return null;
  const whole = meanOf(blocks);
  const peak = peakOf(whole);
  if (!(whole[peak] >= LEAST_CORRELATION)) return null;
  const elsewhere = whole.filter((it, i) => Math.abs(i - peak) * step > AWAY && Number.isFinite(it));
  if (Math.max(...elsewhere) > MOST_ELSEWHERE * whole[peak]) return null;
  const correlationNow = Math.max(...whole.subarray(reach - 1, reach + 2));
  const shift = (peak - reach) * step;
  if (Math.abs(shift) > SAME && correlationNow > MOST_WITHOUT * whole[peak]) return null;
  const clear = blocks.flatMap((own) => {
    const top = peakOf(own);
    return own[top] >= LEAST_CORRELATION ? [summit(own, top) - reach] : [];
  });
  if (clear.length < FEWEST_BLOCKS) return null;
  const middle = medianOf(clear);
  const agreeing = clear.filter((it) => Math.abs(it - middle) <= near);
  if (agreeing.length < AGREEING * clear.length || Math.abs(shift - middle * step) > SAME) return null;
  // y at a later cell is what x saw: b's clock is ahead by that, and has to go back
  const correction = -middle * step;
  const spread = (quantileOf(agreeing, 0.9) - quantileOf(agreeing, 0.1)) * step;
  // half a cell, half the slower one's interval, and the median's own error (1.25 σ/√n, the deciles 2.56 σ apart)
  const half = step / 2 + slower / 2 + (2 * 1.25 * spread) / 2.56 / Math.sqrt(agreeing.length);
  return {
    ...part.span,
    correction,
    low: correction - half,
    high: correction + half,
    days: (agreeing.length * BLOCK) / DAY,
    correlationNow,
    correlationThen: whole[peak],
  };
}

/**
 * Change between the means of the cells before and after, as many as the slower logger needs, without what each time
 * of day has on average, its extremes clipped.
 */
function irregularChanges(temperature: Float64Array, grid: Grid, width: number): Float64Array {
  const mean = (from: number) => {
    let sum = 0;
    for (let i = from; i < from + width; i++) sum += i < 0 ? Number.NaN : temperature[i];
    return sum / width;
  };
  const changes = temperature.map((_, i) =>
    i + width > temperature.length ? Number.NaN : mean(i) - mean(i - width),
  );
  const perDay = Math.round(DAY / grid.step);
  const sums = new Float64Array(perDay);
  const counts = new Float64Array(perDay);
  changes.forEach((it, i) => {
    if (Number.isNaN(it)) return;
    sums[i % perDay] += it;
    counts[i % perDay]++;
  });
  const irregular = changes.map((it, i) => it - sums[i % perDay] / counts[i % perDay]);
  const most = quantileOf(
    irregular.map((it) => Math.abs(it)),
    CLIPPED,
  );
  return irregular.map((it) => Math.max(-most, Math.min(most, it)));
}
