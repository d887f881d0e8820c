/** Daily heat balance: metered heat against temperature difference and sun, over whole days. */
import { type LinearFit, linearLeastSquares } from '../maths/leastSquares.ts';
import { studentTQuantile } from '../maths/studentT.ts';
import { indexAt } from '../series/grid.ts';
import type { HouseRecord } from '../series/record.ts';
import type { HeatLossEstimate, HeatLossNote } from './estimate.ts';

/** Means over one day, dawn to dawn. */
export interface HeatDay {
  /** Heat put in, less what the house stored [W]. */
  readonly heat: number;
  /** Inside less outside [K]. */
  readonly difference: number;
  /** Global horizontal irradiance [W/m²]; null where none was logged. */
  readonly irradiance: number | null;
}

/**
 * The steady regression without intercept, heat = H·difference − R·irradiance.
 *
 * @returns the heat-loss coefficient H [W/K] first and the solar aperture R [m²] second, with their covariance
 * @see EN 17887-2:2024 (scope read; the form from memory); Jack et al. 2018
 */
export function coHeatingRegression(days: readonly HeatDay[]): LinearFit {
  const withSun = days.every(({ irradiance }) => irradiance !== null);
  return linearLeastSquares(
    days.map(({ difference, irradiance }) => (withSun ? [difference, -(irradiance ?? 0)] : [difference])),
    days.map(({ heat }) => heat),
  );
}

const FEWEST_DAYS = 5;
const SMALLEST_DIFFERENCE = 3; // [K]
/** Beyond the scatter of the days: meters and what one daily mean cannot hold; relative. */
const SYSTEMATIC_SD = 0.04;
/** Heat of the sun that no irradiance accounts for makes the loss read low by up to about this (PRACTICE). */
const SUN_LEFT_IN = 1.35;
/** Sun and difference this strongly tied cannot be told apart by a regression. */
const TOO_TIED = 0.95;

/**
 * Heat-loss coefficient from metered days.
 *
 * @param dawns         sunrises that begin the days, rising [s]
 * @param heatCapacity  [J/K], for the heat that the house stored from dawn to dawn; null leaves that out
 * @param constantGains heat that is always given off inside [W]
 * @returns null with fewer than five days that have heat, temperatures and a difference of at least 3 K
 */
export function heatBalance(
  record: HouseRecord,
  dawns: readonly number[],
  heatCapacity: number | null,
  constantGains: number,
): HeatLossEstimate | null {
  const candidates = dawns
    .slice(0, -1)
    .map((dawn, i) => dayOf(record, dawn, dawns[i + 1], heatCapacity ?? 0, constantGains));
  const heated = candidates.filter((day) => day !== null);
  const sunny = heated.filter(({ irradiance }) => irradiance !== null);
  const days = sunny.length >= FEWEST_DAYS ? sunny : heated.map((day) => ({ ...day, irradiance: null }));
  if (days.length < FEWEST_DAYS) return null;
  const fit = coHeatingRegression(days);
  if (fit.kind === 'not fitted') return null;
  const value = fit.coefficients[0];
  if (!(value > 0)) return null;
  const meanDifference = days.reduce((sum, day) => sum + day.difference, 0) / days.length;
  const systematic = Math.hypot(SYSTEMATIC_SD, record.differenceSd / meanDifference);
  const se = Math.hypot(Math.sqrt(fit.covariance[0][0]), systematic * value);
  const half = studentTQuantile(0.975, fit.degreesOfFreedom) * se;
  const notes: HeatLossNote[] = [
    { code: 'days-used', used: days.length, leftOut: candidates.length - days.length },
  ];
  const sunLeftIn = days[0].irradiance === null;
  if (sunLeftIn) notes.push({ code: 'no-irradiance' });
  else if (tied(days)) notes.push({ code: 'sun-not-separable' });
  return {
    method: 'heat-balance',
    tier: 'metered',
    heatLossCoefficient: {
      value,
      low: Math.max(0, value - half),
      high: (value + half) * (sunLeftIn ? SUN_LEFT_IN : 1),
    },
    notes,
  };
}

function dayOf(
  record: HouseRecord,
  from: number,
  to: number,
  heatCapacity: number,
  constantGains: number,
): HeatDay | null {
  const { grid, insideTemperature, outsideTemperature, heatingPower, irradiance } = record;
  const first = indexAt(grid, from);
  const last = indexAt(grid, to);
  if (heatingPower === null || first < 0 || last >= grid.length) return null;
  const mean = (values: Float64Array) =>
    values.subarray(first, last).reduce((sum, v) => sum + v, 0) / (last - first);
  const power = mean(heatingPower);
  const difference = mean(insideTemperature) - mean(outsideTemperature);
  const stored = (heatCapacity * (insideTemperature[last] - insideTemperature[first])) / (to - from);
  if (!(power > 0) || !(difference >= SMALLEST_DIFFERENCE) || Number.isNaN(stored)) return null;
  const sun = irradiance === null ? null : mean(irradiance);
  return {
    heat: power + constantGains - stored,
    difference,
    irradiance: sun === null || Number.isNaN(sun) ? null : sun,
  };
}

function tied(days: readonly HeatDay[]): boolean {
  const x = days.map(({ difference }) => difference);
  const y = days.map(({ irradiance }) => irradiance ?? 0);
  const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, v, i) => sum + v * b[i], 0);
  return dot(x, y) / Math.sqrt(dot(x, x) * dot(y, y)) > TOO_TIED;
}
