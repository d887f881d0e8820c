/** One night as the columns of a chart. Where there is no value there is null, which is drawn as a gap. */
import type { NightCurve } from '../../src/curves.ts';

type Column = (number | null)[];

export interface NightColumns {
  /** [s] */
  readonly time: number[];
  /** [°C] */
  readonly inside: Column;
  readonly fitted: Column;
  readonly outside: Column;
  /** Measured less fitted [K]. */
  readonly residual: Column;
  /** Bounds of what the house as drawn would have done [°C]; all null where nobody can tell. */
  readonly drawnLow: Column;
  readonly drawnHigh: Column;
}

export const nightColumns = (curve: NightCurve): NightColumns => ({
  time: [...curve.time],
  inside: curve.inside.map(orGap),
  fitted: curve.fitted.map(orGap),
  outside: curve.outside.map(orGap),
  residual: residuals(curve),
  drawnLow: curve.time.map((_, i) => orGap(curve.foretold?.low[i])),
  drawnHigh: curve.time.map((_, i) => orGap(curve.foretold?.high[i])),
});

/** A leading NaN would spoil the whole height of a chart. */
export const orGap = (value: number | null | undefined): number | null =>
  typeof value === 'number' && Number.isFinite(value) ? value : null;

function residuals({ inside, fitted }: NightCurve): Column {
  return inside.map((measured, i) => {
    const [a, b] = [orGap(measured), orGap(fitted[i])];
    return a === null || b === null ? null : a - b;
  });
}

/** Root mean square of the residuals [K]; null without a fit. */
export function rmsOf(residual: readonly (number | null)[]): number | null {
  const known = residual.filter((it) => it !== null);
  if (known.length === 0) return null;
  return Math.sqrt(known.reduce((sum, it) => sum + it * it, 0) / known.length);
}

/** Zero and an equal round figure to either side, for the axis of the residuals [K]. */
export function residualTicks(reach: number): number[] {
  const size = 10 ** Math.floor(Math.log10(reach));
  const most =
    [5, 2, 1, 0.5].map((n) => Number((n * size).toPrecision(1))).find((it) => it <= reach * 0.95) ?? size;
  return [-most, 0, most];
}

/** Equal room above and below zero for the residuals, and never less than a twentieth of a kelvin. */
export const residualReach = (residual: readonly (number | null)[]): number =>
  Math.max(0.05, ...residual.map((it) => Math.abs(it ?? 0))) * 1.15;
