/** A change and a year's heat in sentences a homeowner understands. */
import type { Assessment, Estimate, StageResult } from '../assessment.ts';
import { decimal, energy, heatLossBetween, percent, power } from './figures.ts';

type Comparison = Assessment['comparisons'][number];

/**
 * "Over a standard year that is 434 to 2060 kWh less heat." Before what a boiler or heat pump loses itself.
 *
 * @returns null where it is not told in kWh
 */
export function changeOfYearSentence({ energyKWhPerYear: it }: Comparison): string | null {
  if (!it) return null;
  const kWh = (figure: number) => energy(Math.abs(figure) * 3.6e6);
  if (it.high < 0) return `Over a standard year that is ${toMost(kWh(it.high), kWh(it.low))} less heat.`;
  if (it.low > 0) return `Over a standard year that is ${toMost(kWh(it.low), kWh(it.high))} more heat.`;
  return `Over a standard year that is something between ${kWh(it.low)} less and ${kWh(it.high)} more heat.`;
}

/**
 * "For every degree that it is colder outside it now loses 7 to 35 watts less." By the ratio, not by two intervals.
 *
 * @returns null where it is not told in watts
 */
export function changeInWattsSentence({ heatLossDifferenceWK: it }: Comparison): string | null {
  if (!it) return null;
  const opening = 'For every degree that it is colder outside it now loses';
  const [low, high] = heatLossBetween(it)
    .replace(/ W\/K.*/, '')
    .replaceAll('−', '')
    .split(' to ');
  if (it.high < 0) return `${opening} ${high} to ${low} watts less.`;
  if (it.low > 0) return `${opening} ${low} to ${high} watts more.`;
  return `${opening} something between ${low} watts less and ${high} watts more.`;
}

/** "Nights like these show a fall of 14 % or more; a smaller one can hide." Null where nothing was compared. */
export function smallestChangeSentence({ smallestChangePercent: it }: Comparison): string | null {
  if (it === null || it === undefined) return null;
  return `Nights like these show a fall of ${percent(it / 100)} or more; a smaller one can hide in the weather.`;
}

/**
 * "In a usual year with usual occupants it needs 6450 to 8930 kWh of heat, and 2.5 to 3.5 kW on a day of −3 °C: …"
 *
 * @returns null where no year is told
 */
export function yearSentence({ annual }: Pick<StageResult, 'annual'>): string | null {
  if (!annual) return null;
  const { heatDemandKWhPerYear: demand, heatLoadW: load, designDay } = annual;
  const needs = [
    demand && `${energyBetween(demand)} of heat in a usual year with usual occupants`,
    load && `${powerBetween(load)} on a day of ${decimal(designDay.outsideC, 0)} °C`,
  ].filter((it) => it !== null);
  if (needs.length === 0) return null;
  return `It needs ${needs.join(', and ')}: for orientation only.`;
}

/** "6450 to 8930 kWh" and "2.5 to 3.5 kW", from kWh and W. */
export const energyBetween = (it: Estimate) => ends(it, (kWh) => energy(kWh * 3.6e6));
export const powerBetween = (it: Estimate) => ends(it, power);

/** A change that may go either way, in kWh: "−2060 to −434 (−1230)". */
export function energyChangeBetween({ value, low, high }: Estimate): string {
  const [least, most, best] = [low, high, value].map((kWh) => energy(kWh * 3.6e6).split(' ')[0]);
  return `${least} to ${most} (${best})`;
}

const ends = ({ low, high }: Estimate, write: (it: number) => string) => toMost(write(low), write(high));

/** The unit once where both have the same: "434 to 2060 kWh". */
function toMost(least: string, most: string): string {
  const [figure, unit] = least.split(' ');
  return `${most.endsWith(` ${unit}`) ? figure : least} to ${most}`;
}
