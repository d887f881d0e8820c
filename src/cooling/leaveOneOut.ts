/** Whether one night carries the pooled time constant. */
import type { JudgedNight } from './judge.ts';
import { type PooledTimeConstant, poolTimeConstants } from './pool.ts';

export interface WithoutOneNight {
  /** The evening of the night left out. */
  readonly date: string;
  /** Pooled over the others [s]. */
  readonly timeConstant: number;
  /** Its ratio to that of all nights [–]. */
  readonly ratio: number;
}

export interface LeaveOneOut {
  readonly without: readonly WithoutOneNight[];
  /** The night whose absence moves the time constant most. */
  readonly most: WithoutOneNight;
  /** By more than the standard error of all nights together. */
  readonly carries: boolean;
}

/**
 * The pooled time constant with each used night left out in turn.
 *
 * @returns null with fewer than three: two nights less one have nothing to pool
 */
export function leaveOneNightOut(
  nights: readonly JudgedNight[],
  all: PooledTimeConstant | null,
): LeaveOneOut | null {
  const used = nights.filter((night) => night.used && night.fit?.kind === 'fitted');
  if (all === null || used.length < 3) return null;
  const without = used.flatMap((left): WithoutOneNight[] => {
    const others = used.filter((night) => night !== left);
    const pooled = poolTimeConstants(others, 0);
    if (pooled === null) return [];
    const timeConstant = pooled.timeConstant.value;
    return [{ date: left.night.date, timeConstant, ratio: timeConstant / all.timeConstant.value }];
  });
  const moved = ({ ratio }: WithoutOneNight) => Math.abs(Math.log(ratio));
  const [most] = without.toSorted((a, b) => moved(b) - moved(a));
  return most === undefined ? null : { without, most, carries: moved(most) > all.logSe };
}
