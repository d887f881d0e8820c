/** Whether independent ways to the heat loss can all be right. */
import type { HeatLossEstimate } from '../heatloss/index.ts';

/** The first two estimates whose 95 % intervals do not meet; null when all of them do. */
export function disagreement(
  estimates: readonly HeatLossEstimate[],
): readonly [HeatLossEstimate, HeatLossEstimate] | null {
  for (const [i, a] of estimates.entries())
    for (const b of estimates.slice(i + 1))
      if (
        a.heatLossCoefficient.low > b.heatLossCoefficient.high ||
        b.heatLossCoefficient.low > a.heatLossCoefficient.high
      )
        return [a, b];
  return null;
}
