/** The days of a stage that count, and how many do not. */
import { type BalancedDay, type BalanceSeries, heatDay, type Leaving } from './heatDay.ts';

export interface BalancedDays {
  readonly days: readonly BalancedDay[];
  /** How many were left out for each reason. */
  readonly left: ReadonlyMap<Leaving, number>;
}

/** Each from one start to the next. */
export function balancedDays(series: BalanceSeries, starts: readonly number[]): BalancedDays {
  const days: BalancedDay[] = [];
  const left = new Map<Leaving, number>();
  starts.slice(0, -1).forEach((start, i) => {
    const day = heatDay(series, start, starts[i + 1]);
    if (day === null) return;
    if (typeof day === 'string') left.set(day, (left.get(day) ?? 0) + 1);
    else days.push(day);
  });
  return { days, left };
}
