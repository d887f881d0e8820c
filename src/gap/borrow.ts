/** One heated night calibrates the free nights of the stages before and after it. */
import type { Estimate } from '../assessment.ts';
import type { HeatLossEstimate } from '../heatloss/index.ts';
import { logInterval, logSdOf } from '../maths/logInterval.ts';

/**
 * A metered estimate of one stage carried over to another that has free nights only.
 *
 * @param metered the other stage's estimate, from metered heat
 * @param from    the other stage's name
 * @param ratio   heat loss here over there, from the time constants of both
 */
export function borrow(metered: HeatLossEstimate, from: string, ratio: Estimate): HeatLossEstimate {
  const { value } = metered.heatLossCoefficient;
  const logSd = Math.hypot(logSdOf(metered.heatLossCoefficient), logSdOf(ratio));
  return {
    method: metered.method,
    tier: metered.tier,
    heatLossCoefficient: logInterval(value * ratio.value, logSd),
    notes: [{ code: 'borrowed-from-stage', stage: from }, ...metered.notes],
  };
}
