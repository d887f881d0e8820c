/** All loggers of a house on one grid, beside the sun: what the senses look at. */
import type { Where } from '../assessment.ts';
import { type Grid, gridOver, timeAt } from '../series/grid.ts';
import { type Lay, laid, type Readings } from '../series/laying.ts';
import type { Place } from '../sky/place.ts';
import { sunPosition } from '../sky/sunPosition.ts';
import type { ReadClock, SensedLogger, SensedWeather } from './sensed.ts';

export interface Laid {
  readonly logger: SensedLogger;
  /** On the grid, NaN where missing [°C]. */
  readonly temperature: Float64Array;
  /** [–]; null where it has none. */
  readonly relativeHumidity: Float64Array | null;
}

export interface Scene {
  readonly grid: Grid;
  readonly place: Place;
  readonly loggers: readonly Laid[];
  readonly weather: SensedWeather | null;
  /** On the grid [°C], [W/m²]; null where there is none. */
  readonly weatherTemperature: Float64Array | null;
  readonly irradiance: Float64Array | null;
  /** The median of one of these series. */
  readonly levelOf: (series: Float64Array) => number;
  /** Of the sun at each cell [rad]. */
  readonly elevation: Float64Array;
  readonly azimuth: Float64Array;
}

/** Null without a logger that has two readings. */
export function sceneOf(
  loggers: readonly SensedLogger[],
  weather: SensedWeather | null,
  place: Place,
  lay: Lay = laid,
): Scene | null {
  const useful = loggers.filter(({ temperature }) => temperature.time.length > 1);
  if (useful.length === 0) return null;
  const grid = gridOver(
    Math.min(...useful.map(({ temperature }) => temperature.time[0])),
    Math.max(...useful.map(({ temperature: { time } }) => time[time.length - 1])),
  );
  const onGrid = (readings: Readings | undefined) => (readings ? lay(readings, grid) : null);
  const sun = Array.from({ length: grid.length }, (_, i) => sunPosition(timeAt(grid, i), place));
  return {
    grid,
    place,
    loggers: useful.map((logger) => ({
      logger,
      temperature: lay(logger.temperature, grid),
      relativeHumidity: onGrid(logger.relativeHumidity),
    })),
    weather,
    weatherTemperature: onGrid(weather?.temperature),
    irradiance: onGrid(weather?.irradiance),
    levelOf: levelsOnce(),
    elevation: Float64Array.from(sun, ({ elevation }) => elevation),
    azimuth: Float64Array.from(sun, ({ azimuth }) => azimuth),
  };
}

/** The same series are looked at by many. */
function levelsOnce(): Scene['levelOf'] {
  const levels = new Map<Float64Array, number>();
  return (series) => {
    const level = levels.get(series) ?? medianOf(series);
    levels.set(series, level);
    return level;
  };
}

/** More values than this are thinned before they are sorted. */
const ENOUGH = 8000;

/**
 * Quantile of the values that are there, straight between neighbours; NaN without any. Of very many, some thousands
 * spread over them stand for all; each time of day has its share, since their distance has no factor in common with a day.
 */
export function quantileOf(values: ArrayLike<number>, share: number): number {
  let stride = Math.ceil(values.length / ENOUGH);
  while (stride > 1 && (stride % 2 === 0 || stride % 3 === 0)) stride++;
  const spread = new Float64Array(Math.ceil(values.length / stride) || 0);
  let count = 0;
  for (let i = 0; i < values.length; i += stride) if (!Number.isNaN(values[i])) spread[count++] = values[i];
  const known = spread.subarray(0, count).sort();
  if (known.length === 0) return Number.NaN;
  const place = share * (known.length - 1);
  const below = Math.floor(place);
  return known[below] + (place - below) * (known[Math.ceil(place)] - known[below]);
}

export const medianOf = (values: ArrayLike<number>) => quantileOf(values, 0.5);

/**
 * At each cell the median of several series, each less its own median, so that one that drops out makes no
 * step; NaN where none is there.
 */
export function commonCourse(
  series: readonly Float64Array[],
  { levelOf }: Pick<Scene, 'levelOf'>,
): Float64Array {
  const levels = series.map(levelOf);
  const present = new Float64Array(series.length);
  return series[0].map((_, cell) => {
    let count = 0;
    for (let k = 0; k < series.length; k++) {
      const value = series[k][cell] - levels[k];
      if (Number.isNaN(value)) continue;
      // into its place among so few: sorting them would cost a call for every cell
      let place = count++;
      for (; place > 0 && present[place - 1] > value; place--) present[place] = present[place - 1];
      present[place] = value;
    }
    const middle = count >> 1;
    if (count === 0) return Number.NaN;
    return count % 2 === 1 ? present[middle] : (present[middle - 1] + present[middle]) / 2;
  });
}

/** The cells of each stretch from one solar midnight to the next, first to last, last not included. */
export function solarDays({ grid, place }: Pick<Scene, 'grid' | 'place'>): { from: number; to: number }[] {
  const DAY = 86_400;
  const midnight = (Math.floor((grid.start + place.longitude * 240) / DAY) + 1) * DAY - place.longitude * 240;
  const perDay = DAY / grid.step;
  const first = Math.round((midnight - grid.start) / grid.step);
  const days = first > 0 ? [{ from: 0, to: Math.min(first, grid.length) }] : [];
  for (let from = first; from < grid.length; from += perDay)
    days.push({ from, to: Math.min(from + perDay, grid.length) });
  return days;
}

/** Which logger is meant. */
export const whereOf = ({ file, column }: ReadClock): Where => ({ file, ...(column && { column }) });
