/** What a change of the heat loss would be in air, if all of it were leakage. */
import type { Estimate } from '../../assessment.ts';
import { ventilationLoss } from '../../fabric/index.ts';

export interface Leakable {
  /** After less before: negative where the house leaks less. Null where the fabric as drawn leaves it no room. */
  readonly airChangesPerHour: Estimate | null;
  /** Cut to what the leakier stage could hold. */
  readonly cut: boolean;
}

export interface SidesToLeak {
  /** [W/K]; null where the stage has no figure */
  readonly before: Estimate | null;
  readonly after: Estimate | null;
}

/**
 * A difference in W/K over 0.33·V.
 *
 * The stage that leaks more cannot lose more by leakage than what it loses at the most less what its fabric as
 * drawn loses at the least; what lies beyond is cut off.
 *
 * @param difference after less before [W/K]
 * @param fabric     least loss of elements and bridges as drawn [W/K]; 0 where it is not known
 * @param volume     [m³]
 */
export function airChangesOf(
  difference: Estimate,
  { before, after }: SidesToLeak,
  fabric: number,
  volume: number,
): Leakable {
  const most = (stage: Estimate | null) =>
    stage === null ? Number.POSITIVE_INFINITY : Math.max(0, stage.high - fabric);
  const [least, largest] = [-most(before), most(after)];
  const within = (it: number) => Math.max(least, Math.min(largest, it)) / ventilationLoss(1, volume);
  const { value, low, high } = difference;
  const room = largest > least;
  return {
    airChangesPerHour: room ? { value: within(value), low: within(low), high: within(high) } : null,
    cut: low < least || high > largest,
  };
}
