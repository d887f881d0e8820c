/** The weather that each of two stages was measured in, and whether it was too unlike. */
import type { JudgedNight } from '../../cooling/index.ts';
import type { HouseRecord } from '../../series/record.ts';

/** Means over the windows of the nights used; null where nothing was logged or no night used. */
export interface StageWeather {
  /** Nights used. */
  readonly nights: number;
  /** [°C] */
  readonly outsideTemperature: number | null;
  /** Inside less outside [K]. */
  readonly difference: number | null;
  /** [m/s] */
  readonly windSpeed: number | null;
  /** Global horizontal over the day up to each window, since the mass still holds that day's sun [W/m²]. */
  readonly irradiance: number | null;
}

/** In what two stages' weather is so far apart that the comparison leans on the model: before and after. */
export interface WeatherApart {
  /** [K] */
  readonly difference: readonly [number, number] | null;
  /** [m/s] */
  readonly windSpeed: readonly [number, number] | null;
}

const DAY = 86_400; // [s]
/** Factors between the stages. PRACTICE. */
const DIFFERENCE_APART = 1.5;
const WIND_APART = 2;
/** Below this wind drives little beside warmth [m/s]. PRACTICE. */
const LEAST_WIND = 2;

export function weatherOf(
  { grid, insideTemperature, outsideTemperature, windSpeed, irradiance }: HouseRecord,
  nights: readonly JudgedNight[],
): StageWeather {
  const windows = nights.flatMap(({ used, window }) => (used && window !== null ? [window] : []));
  const days = windows.map(({ first }) => ({
    first: Math.max(0, first - Math.round(DAY / grid.step)),
    last: first - 1,
  }));
  const mean = (spans: readonly Span[], at: ((cell: number) => number) | null) =>
    at === null ? null : meanOver(spans, at);
  return {
    nights: windows.length,
    outsideTemperature: mean(windows, (i) => outsideTemperature[i]),
    difference: mean(windows, (i) => insideTemperature[i] - outsideTemperature[i]),
    windSpeed: mean(windows, windSpeed && ((i) => windSpeed[i])),
    irradiance: mean(days, irradiance && ((i) => irradiance[i])),
  };
}

export function weatherApart(before: StageWeather, after: StageWeather): WeatherApart {
  const pair = (key: 'difference' | 'windSpeed', factor: number, least: number) => {
    const [a, b] = [before[key], after[key]];
    if (a === null || b === null) return null;
    const [low, high] = [Math.min(a, b), Math.max(a, b)];
    return high > factor * low && high >= least ? ([a, b] as const) : null;
  };
  return {
    difference: pair('difference', DIFFERENCE_APART, 0),
    windSpeed: pair('windSpeed', WIND_APART, LEAST_WIND),
  };
}

/** Cells of the grid, both ends counted. */
interface Span {
  readonly first: number;
  readonly last: number;
}

function meanOver(spans: readonly Span[], at: (cell: number) => number): number | null {
  let [count, sum] = [0, 0];
  for (const { first, last } of spans)
    for (let i = first; i <= last; i++) {
      const value = at(i);
      if (Number.isNaN(value)) continue;
      count++;
      sum += value;
    }
  return count === 0 ? null : sum / count;
}
