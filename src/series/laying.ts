/** Readings at any spacing on a grid, with gaps where they are further apart than the logger's habit. */
import type { Grid } from './grid.ts';
import { resample } from './resample.ts';
import { longestStepOf } from './steps.ts';

export interface Readings {
  /** Instants, strictly rising [s since 1970 UTC]; length n. */
  readonly time: Float64Array;
  /** Length n; NaN where missing. */
  readonly value: Float64Array;
}

/** One value per cell, NaN where missing. */
export type Lay = (readings: Readings, grid: Grid) => Float64Array;

export const laid: Lay = ({ time, value }, grid) => resample(time, value, grid, longestStepOf(time));

/** Lays readings as `laid` does; those that it laid on the same grid before are not laid again. */
export function layingOnce(): Lay {
  const before = new Map<Float64Array, { time: Float64Array; grid: Grid; series: Float64Array }>();
  return (readings, grid) => {
    const { time, value } = readings;
    const own = before.get(value);
    if (own?.time === time && isSameGrid(own.grid, grid)) return own.series;
    const series = laid(readings, grid);
    before.set(value, { time, grid, series });
    return series;
  };
}

const isSameGrid = (a: Grid, b: Grid) => a.start === b.start && a.step === b.step && a.length === b.length;
