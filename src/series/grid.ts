/** One uniform time grid for the whole record, so that series line up cell by cell. */

/** Cell i is centred on start + i·step and reaches half a step to either side. */
export interface Grid {
  /** Centre of the first cell [s since 1970 UTC], a multiple of the step. */
  readonly start: number;
  /** [s] */
  readonly step: number;
  /** How many cells. */
  readonly length: number;
}

/** [s] Ten minutes: fine beside the time constant of a room, coarse beside a logger's noise. */
export const GRID_STEP = 600;

/**
 * The cells centred on multiples of the step, from the last at or before `first` to the first at or after
 * `last`.
 *
 * @throws RangeError when `last` is before `first`, or the step is not above 0
 */
export function gridOver(first: number, last: number, step = GRID_STEP): Grid {
  if (!(step > 0)) throw new RangeError('the step must be above 0');
  if (!(first <= last)) throw new RangeError('the record ends before it begins');
  const before = Math.floor(first / step);
  return { start: before * step, step, length: Math.ceil(last / step) - before + 1 };
}

/** The centre of a cell [s]. */
export function timeAt(grid: Grid, index: number): number {
  return grid.start + index * grid.step;
}

/** The cell that holds an instant; below 0 or from `length` on when that is outside of the grid. */
export function indexAt(grid: Grid, instant: number): number {
  return Math.floor((instant - grid.start) / grid.step + 0.5);
}

/** The centres of the cells from `first` to `last`, both included [s]. */
export function timesBetween(grid: Grid, first: number, last: number): Float64Array {
  return Float64Array.from({ length: last - first + 1 }, (_, i) => timeAt(grid, first + i));
}
