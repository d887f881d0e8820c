/** Daily heat balance: metered heat against temperature difference and sun, over whole days. */
import { logInterval } from '../../maths/logInterval.ts';
import type { HeatLossEstimate, HeatLossNote } from '../estimate.ts';
import { aroundOf, type BalanceInput } from './around.ts';
import { balancedDays } from './balancedDays.ts';
import { logSd } from './doubt.ts';
import { fitDays } from './fitDays.ts';
import { notesOf, whyNone } from './notes.ts';

const FEWEST_DAYS = 5;
const HOUR = 3600; // [s]
/** Days begun at these hours after dawn instead show how much hangs on it [h]. */
const OTHER_STARTS = [3, 6, 9, 12, 15, 18, 21];
/**
 * Heat of the sun that neither irradiance nor drawn glass accounts for: the true loss may be so many times what the
 * interval would reach without it. With it 58 of 59 intervals hold on the tuning seeds 100 to 103, without it 37.
 */
const SUN_LEFT_IN = 1.5;

export interface MeteredDays {
  /** Null without metered heat, with fewer than five days that count, and where the flow to a neighbour is not known. */
  readonly estimate: HeatLossEstimate | null;
  /** Where days were metered and yet there is no estimate: why. */
  readonly unanswered: readonly HeatLossNote[];
}

/**
 * Heat-loss coefficient to outdoors and ground from days whose heat is all metered, dawn to dawn: what the house
 * stored, the gains and the flow to a heated neighbour are taken out beforehand. `fitDays.ts` has the form.
 */
export function heatBalance(input: BalanceInput): MeteredDays {
  const around = aroundOf(input);
  if (around === null) return { estimate: null, unanswered: [] };
  const { series, glazed } = around;
  const dawns = input.nights
    .map(({ night }) => night.sunrise)
    .filter((dawn) => dawn >= input.stage.from && dawn <= input.stage.to);
  const balanced = balancedDays(series, dawns);
  const { days } = balanced;
  const fit = days.length < FEWEST_DAYS ? null : fitDays(days, glazed);
  if (fit === null) return { estimate: null, unanswered: whyNone(around, balanced, FEWEST_DAYS) };
  const others = OTHER_STARTS.flatMap((hours) => {
    const starts = dawns.map((dawn) => dawn + hours * HOUR);
    const moved = balancedDays(series, starts).days;
    const other = moved.length < FEWEST_DAYS ? null : fitDays(moved, glazed);
    return other === null ? [] : [other.heatLossCoefficient];
  });
  const sunLeftIn = series.irradiance === null && !glazed;
  const interval = logInterval(fit.heatLossCoefficient, logSd(input, around, days, fit, others));
  const estimate: HeatLossEstimate = {
    method: 'heat-balance',
    tier: 'metered',
    heatLossCoefficient: { ...interval, high: interval.high * (sunLeftIn ? SUN_LEFT_IN : 1) },
    notes: notesOf(input, around, balanced, fit, others),
  };
  return { estimate, unanswered: [] };
}
