/** How good a heated night was for its two slopes: what was strained, so that it can be said beside the figure. */
import type { HouseRecord } from '../series/record.ts';
import type { HeatLossNote } from './estimate.ts';
import type { HeaterPhases } from './heaterPhases.ts';

/** Best where the house loses 30 to 60 % of the heater's power; far from it the slopes say little. */
const WEAK = 0.8;
const STRONG = 0.15;
/** How long before the heater came on the house is looked at [s]. */
const BEFORE = 2 * 3600;
/** It was still settling where it fell this many times as fast as it did at the night's end, or rose. PRACTICE. */
const STILL_SETTLING = 2;
const WINDY = 6; // [m/s]; PRACTICE
const WIND_CHANGED = 2; // [m/s] between the phases; PRACTICE
/** Of the mean difference; a mass that answers late still feels what outdoors was. PRACTICE */
const DRIFTED = 1 / 3;

export interface NightToWeigh {
  readonly date: string;
  readonly record: HouseRecord;
  /** What the house cools towards, on the grid [°C]. */
  readonly driver: Float64Array;
  readonly phases: HeaterPhases;
  readonly cooling: { /** [K/s] */ readonly slope: number /** [K] */; readonly difference: number };
  /** Share of the heater's power that the house loses anyway. */
  readonly lostShare: number;
}

/** Empty for a night that was as it should be. */
export function worthOf(night: NightToWeigh): HeatLossNote[] {
  return [...heaterOf(night.lostShare), ...settledOf(night), ...windOf(night), ...outdoorsOf(night)];
}

function heaterOf(share: number): HeatLossNote[] {
  if (share > WEAK) return [{ code: 'heater-weak', share }];
  return share < STRONG ? [{ code: 'heater-strong', share }] : [];
}

function settledOf({ date, record, phases, cooling }: NightToWeigh): HeatLossNote[] {
  const { grid, insideTemperature } = record;
  const from = phases.switchedOn - Math.round(BEFORE / grid.step);
  const slope =
    from < 0
      ? Number.NaN
      : (insideTemperature[phases.switchedOn] - insideTemperature[from]) /
        ((phases.switchedOn - from) * grid.step);
  if (Number.isNaN(slope)) return [{ code: 'settling-not-known', date }];
  return slope > 0 || slope < STILL_SETTLING * cooling.slope
    ? [{ code: 'mass-not-settled', date, slope }]
    : [];
}

function windOf({ date, record: { windSpeed: wind }, phases }: NightToWeigh): HeatLossNote[] {
  if (wind === null) return [];
  const heating = meanOver(wind, phases.heating);
  const cooling = meanOver(wind, phases.cooling);
  if (Math.abs(heating - cooling) > WIND_CHANGED) return [{ code: 'wind-changed', date, heating, cooling }];
  const windSpeed = (heating + cooling) / 2;
  return windSpeed > WINDY ? [{ code: 'windy-night', date, windSpeed }] : [];
}

function outdoorsOf({ date, driver, phases, cooling }: NightToWeigh): HeatLossNote[] {
  const drift = driver[phases.cooling.last] - driver[phases.switchedOn];
  return Math.abs(drift) > DRIFTED * cooling.difference ? [{ code: 'outdoors-drifted', date, drift }] : [];
}

const meanOver = (series: Float64Array, { first, last }: { first: number; last: number }) =>
  series.subarray(first, last + 1).reduce((sum, v) => sum + v, 0) / (last - first + 1);
