/** Adds up pieces of a record, straight lines in time, into the mean of each cell of a grid. */
import type { Grid } from './grid.ts';

export interface CellMeans {
  /** Adds a piece that runs straight from one value to another; pieces must not overlap. Instants in [s]. */
  add(from: number, to: number, valueFrom: number, valueTo: number): void;
  /** The mean over each cell; NaN for a cell that the pieces do not cover whole. */
  means(): Float64Array;
}

/** [–] The part of a cell that may stay uncovered: instants are exact to some 1e-7 s only. */
const UNCOVERED = 1e-6;

export function cellMeans(grid: Grid): CellMeans {
  const { start, step, length } = grid;
  const integral = new Float64Array(length);
  const covered = new Float64Array(length);

  // in cells, counted from the first cell's beginning: cell i is i to i + 1
  const inCells = (instant: number) => (instant - start) / step + 0.5;

  return {
    add(from, to, valueFrom, valueTo) {
      const left = inCells(from);
      const right = inCells(to);
      const slope = (valueTo - valueFrom) / (right - left);
      let cell = Math.max(0, Math.floor(left));
      let a = Math.max(left, cell);
      for (; cell < length && cell < right; cell++) {
        const b = Math.min(right, cell + 1);
        integral[cell] += (b - a) * (valueFrom + slope * ((a + b) / 2 - left));
        covered[cell] += b - a;
        a = b;
      }
    },
    means: () => integral.map((it, i) => (covered[i] >= 1 - UNCOVERED ? it / covered[i] : Number.NaN)),
  };
}
