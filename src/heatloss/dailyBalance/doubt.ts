/** How sure a daily balance is. */
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { NORMAL_95 } from '../../maths/logInterval.ts';
import { studentTQuantile } from '../../maths/studentT.ts';
import type { Around, BalanceInput } from './around.ts';
import type { FittedDays } from './fitDays.ts';
import type { BalancedDay } from './heatDay.ts';

/**
 * What no run of days tells: sky, ground and wind, and rooms that no logger hangs in; relative. With it 95 % intervals
 * hold on the tuning seeds 100 to 103.
 */
const SYSTEMATIC_SD = 0.04;
/** Stated gains are known to about this; relative. PRACTICE. */
const GAINS_SD = 0.4;
/** A wall to a neighbour may be built otherwise than drawn by this; relative. PRACTICE. */
const PARTY_WALL_SD = 0.25;
/** A thermostat's setting stands for the mean over rooms and hours to about this [K]. PRACTICE. */
export const ASSUMED_INSIDE_SD = 1;

/**
 * One standard deviation of the logarithm.
 *
 * @param others heat losses by days that begin at other hours [W/K]
 */
export function logSd(
  { record, house }: BalanceInput,
  { series, neighbour, assumedInside }: Around,
  days: readonly BalancedDay[],
  fit: FittedDays,
  others: readonly number[],
): number {
  const difference = meanOf(days, (day) => day.difference);
  const heat = fit.heatLossCoefficient * difference;
  const gainsSd = GAINS_SD * (house.constantGainsW ?? 0);
  const insideSd =
    assumedInside === null ? record.differenceSd : Math.hypot(record.differenceSd, ASSUMED_INSIDE_SD);
  const neighbourSd =
    neighbour === null
      ? 0
      : Math.hypot(
          PARTY_WALL_SD * meanOf(days, ({ toNeighbour }) => toNeighbour),
          series.toNeighbour * neighbour.sd,
        );
  const random = (studentTQuantile(0.975, fit.degreesOfFreedom) / NORMAL_95) * fit.sd;
  return Math.hypot(
    random,
    SYSTEMATIC_SD,
    record.heatingPowerSd,
    insideSd / difference,
    gainsSd / heat,
    neighbourSd / heat,
    others.length === 0 ? 0 : sampleStandardDeviation([fit.heatLossCoefficient, ...others].map(Math.log)),
  );
}

const meanOf = (days: readonly BalancedDay[], of: (day: BalancedDay) => number) => mean(days.map(of));
