/** What loggers differ by while they lie side by side. */

import { mean, median, sampleVariance } from 'simple-statistics';
import type { Where } from '../assessment.ts';
import { effectiveSamples, lag1Autocorrelation } from '../maths/autocorrelation.ts';
import { gridOver, timeAt } from '../series/grid.ts';
import { laid } from '../series/laying.ts';
import { spacingOf } from '../series/steps.ts';
import { displayStepOf } from './duplicates.ts';
import { whereOf } from './scene.ts';
import type { ReadClock, Readings } from './sensed.ts';

const HOUR = 3600;
/** [s] What the loggers need to come to the air's temperature. */
const SETTLING = HOUR;
/** [s] What should be left after that, and what must be. */
const LONG_ENOUGH = 2 * HOUR;
const LEAST = HOUR;
const FEWEST_CELLS = 4;

export interface SideBySide extends ReadClock {
  readonly readings: Readings;
}

/** In the unit of the readings. */
export interface CoLocationOffset {
  readonly where: Where;
  /** The logger less the median of all; take it off its readings. */
  readonly offset: number;
  readonly standardError: number;
  /** Independent readings that it rests on, and the step of the display. */
  readonly effectiveReadings: number;
  readonly resolution: number;
}

export type CoLocation =
  | {
      readonly kind: 'offsets';
      readonly offsets: readonly CoLocationOffset[];
      /** What was used of the spell, its settling first hour left out [s]. */
      readonly from: number;
      readonly to: number;
      /** Largest less smallest of the median of all, and its change per hour. */
      readonly range: number;
      readonly drift: number;
      readonly warnings: readonly ('short spell' | 'not steady')[];
      /** Loggers with no readings in the spell. */
      readonly absent: readonly Where[];
    }
  | {
      readonly kind: 'too short';
      /** With readings of all after the settling hour [s]. */
      readonly duration: number;
      readonly absent: readonly Where[];
    }
  | { readonly kind: 'too few loggers'; readonly absent: readonly Where[] };

/** More than this moves loggers apart that answer at different speeds: over the spell, and per hour. */
export const steadyTemperature = { range: 2, drift: 0.5 }; // [K]
export const steadyHumidity = { range: 0.08, drift: 0.02 }; // [–]

/**
 * Offsets to the median of all over a spell, each with its standard error: that of a mean of readings that hang
 * together in time, and the display's step, of which a steady temperature never shows more than one side.
 *
 * @param span   when all lay side by side [s]
 * @param steady what counts as steady, by the quantity
 */
export function coLocationOffsets(
  loggers: readonly SideBySide[],
  span: { readonly from: number; readonly to: number },
  steady: { readonly range: number; readonly drift: number } = steadyTemperature,
): CoLocation {
  const [present, absent] = [true, false].map((wanted) =>
    loggers.filter(({ readings }) => hasReadings(readings, span) === wanted),
  );
  const missing = absent.map(whereOf);
  if (present.length < 2) return { kind: 'too few loggers', absent: missing };
  const step = Math.max(600, ...present.map(({ readings }) => spacingOf(readings.time)));
  const begin = span.from + SETTLING;
  if (span.to - begin < LEAST)
    return { kind: 'too short', duration: Math.max(0, span.to - begin), absent: missing };
  const grid = gridOver(begin + step / 2, Math.max(begin + step / 2, span.to - step / 2), step);
  const all = present.map(({ readings }) => laid(readings, grid));
  const cells = Array.from({ length: grid.length }, (_, i) => i).filter(
    (i) =>
      timeAt(grid, i) - step / 2 >= begin &&
      timeAt(grid, i) + step / 2 <= span.to &&
      all.every((series) => !Number.isNaN(series[i])),
  );
  const duration = cells.length * step;
  if (duration < LEAST || cells.length < FEWEST_CELLS)
    return { kind: 'too short', duration, absent: missing };
  const middle = cells.map((i) => median(all.map((series) => series[i])));
  const range = Math.max(...middle) - Math.min(...middle);
  const hours = (timeAt(grid, cells[cells.length - 1]) - timeAt(grid, cells[0])) / HOUR;
  const drift = (middle[middle.length - 1] - middle[0]) / hours;
  const offsets = present.map((logger, k): CoLocationOffset => {
    const differences = cells.map((i, n) => all[k][i] - middle[n]);
    const { standardError, effectiveReadings } = errorOfMean(differences);
    const resolution = displayStepOf(logger.readings.value);
    return {
      where: whereOf(logger),
      offset: mean(differences),
      standardError: Math.hypot(standardError, resolution / Math.sqrt(12)),
      effectiveReadings,
      resolution,
    };
  });
  return {
    kind: 'offsets',
    offsets,
    from: timeAt(grid, cells[0]) - step / 2,
    to: timeAt(grid, cells[cells.length - 1]) + step / 2,
    range,
    drift,
    warnings: [
      ...(duration < LONG_ENOUGH ? ['short spell' as const] : []),
      ...(range > steady.range || Math.abs(drift) > steady.drift ? ['not steady' as const] : []),
    ],
    absent: missing,
  };
}

const hasReadings = ({ time, value }: Readings, { from, to }: { from: number; to: number }) =>
  time.some((t, i) => t >= from && t <= to && !Number.isNaN(value[i]));

/**
 * Of a mean of neighbours that resemble each other. The correlation of a short series comes out too small by
 * (1 + 3φ)/n: M. G. Kendall, Note on bias in the estimation of autocorrelation, Biometrika 41 (1954) 403.
 */
function errorOfMean(values: readonly number[]) {
  const variance = sampleVariance([...values]);
  if (variance === 0) return { standardError: 0, effectiveReadings: values.length };
  const found = lag1Autocorrelation(values);
  const effectiveReadings = effectiveSamples(values.length, found + (1 + 3 * found) / values.length);
  return { standardError: Math.sqrt(variance / effectiveReadings), effectiveReadings };
}
