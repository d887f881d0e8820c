/** Heating degree days, and what they mean for a year's heat. */
import { sum } from 'simple-statistics';

const secondsOfDay = 86_400;

export interface DailyExtremes {
  /** [°C] */
  readonly lowest: number;
  readonly highest: number;
}

/** Degree days [K·day] and the base they were counted from [°C]: neither means anything alone. */
export interface DegreeDays {
  readonly degreeDays: number;
  readonly baseTemperature: number;
}

/**
 * A standard year of the United Kingdom, January to December [K·day].
 *
 * READ second-hand: the government's normalised-performance total, base 15.5 °C.
 */
export const standardYear: DegreeDays & { readonly months: readonly number[] } = {
  months: [395, 342, 297, 233, 151, 77, 42, 45, 83, 177, 275, 346],
  degreeDays: 2463,
  baseTemperature: 15.5,
};

/**
 * Degree days from each day's lowest and highest temperature.
 *
 * @param baseTemperature [°C]; 15.5 by British convention
 * @see DoE Fuel Efficiency Booklet 7; CIBSE TM41:2006
 */
export function degreeDaysOfExtremes(days: readonly DailyExtremes[], baseTemperature: number): DegreeDays {
  return { degreeDays: sum(days.map((it) => ofDay(it, baseTemperature))), baseTemperature };
}

/** The first condition that matches: a day wholly above, mostly above, mostly below or wholly below the base. */
function ofDay({ lowest, highest }: DailyExtremes, base: number): number {
  const mean = (lowest + highest) / 2;
  if (lowest > base) return 0;
  if (mean > base) return (base - lowest) / 4;
  if (highest >= base) return (base - lowest) / 2 - (highest - base) / 4;
  return base - mean;
}

export interface DegreeDaysOfSeries extends DegreeDays {
  /** Share of the readings that were there [–]; the degree days are of those alone. */
  readonly covered: number;
}

/**
 * Degree days as the integral of what the temperature falls short of the base.
 *
 * @param temperature at even steps [°C]; NaN where missing
 * @param step        [s], an hour or less: the mean of a day hides its cold half
 */
export function degreeDaysOfSeries(
  temperature: Float64Array,
  step: number,
  baseTemperature: number,
): DegreeDaysOfSeries {
  const there = Array.from(temperature).filter((it) => !Number.isNaN(it));
  const short = there.map((it) => Math.max(0, baseTemperature - it));
  return {
    degreeDays: (sum(short) * step) / secondsOfDay,
    baseTemperature,
    covered: temperature.length === 0 ? 0 : there.length / temperature.length,
  };
}

/**
 * Temperature outside at which the gains alone keep the house warm [°C].
 *
 * @param insideTemperature    mean [°C]
 * @param gains                mean of sun, people and appliances [W]
 * @param heatLossCoefficient  [W/K]
 * @see CIBSE TM41:2006
 */
export function baseTemperatureOf(
  insideTemperature: number,
  gains: number,
  heatLossCoefficient: number,
): number {
  return insideTemperature - gains / heatLossCoefficient;
}

/**
 * Heat that the house needs over these degree days [J], before any boiler's or heat pump's own loss.
 *
 * @param heatLossCoefficient [W/K]
 */
export function heatDemand(heatLossCoefficient: number, { degreeDays }: DegreeDays): number {
  return heatLossCoefficient * degreeDays * secondsOfDay;
}
