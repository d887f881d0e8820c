/** What is said beside a daily balance, or in its place. */
import { mean, sum } from 'simple-statistics';
import { NORMAL_95 } from '../../maths/logInterval.ts';
import type { HeatLossNote } from '../estimate.ts';
import type { Around, BalanceInput } from './around.ts';
import type { BalancedDays } from './balancedDays.ts';
import { ASSUMED_INSIDE_SD } from './doubt.ts';
import type { FittedDays } from './fitDays.ts';
import type { Leaving } from './heatDay.ts';

export function notesOf(
  { house }: BalanceInput,
  { series, glazed, assumedInside, neighbour }: Around,
  { days, left }: BalancedDays,
  fit: FittedDays,
  others: readonly number[],
): HeatLossNote[] {
  const all = [fit.heatLossCoefficient, ...others];
  const { sunShare } = fit;
  const notes: (HeatLossNote | null)[] = [
    { code: 'days-used', used: days.length, leftOut: sum([...left.values()]) },
    ...reasonsOf(left),
    ...insideNote(assumedInside),
    others.length === 0
      ? null
      : { code: 'start-hour-moves', lowest: Math.min(...all), highest: Math.max(...all) },
    house.constantGainsW ? { code: 'gains-allowed-for', gains: house.constantGainsW } : null,
    neighbour === null
      ? null
      : {
          code: 'neighbour-flow-taken-out',
          flow: mean(days.map(({ toNeighbour }) => toNeighbour)),
          known: neighbour.known,
        },
    series.irradiance === null
      ? glazed
        ? { code: 'sun-of-ordinary-sky', share: sunShare }
        : { code: 'no-irradiance' }
      : fit.tied
        ? glazed
          ? { code: 'sun-held-by-glass', share: sunShare }
          : { code: 'sun-not-separable' }
        : null,
  ];
  return notes.filter((note) => note !== null);
}

/** Fewer days with heat are a heated night or two, and no daily balance was meant. */
const MEANT = 3;

/** @param needed the fewest days that are fitted */
export function whyNone(
  { assumedInside }: Around,
  { days, left }: BalancedDays,
  needed: number,
): HeatLossNote[] {
  const leftOut = sum([...left.values()]);
  const heated = days.length + leftOut - (left.get('no-heat') ?? 0) - (left.get('gap-in-heat') ?? 0);
  if (heated < MEANT && assumedInside === null) return [];
  return [
    days.length < needed
      ? { code: 'too-few-metered-days', used: days.length, needed }
      : { code: 'metered-days-contradict', used: days.length },
    ...reasonsOf(left),
    ...insideNote(assumedInside),
  ];
}

const reasonsOf = (left: ReadonlyMap<Leaving, number>) =>
  Array.from(left, ([why, count]): HeatLossNote => ({ code: 'days-left-out', why, count }));

const insideNote = (temperature: number | null): HeatLossNote[] =>
  temperature === null
    ? []
    : [{ code: 'inside-assumed', temperature, plusMinus: NORMAL_95 * ASSUMED_INSIDE_SD }];
