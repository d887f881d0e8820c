/** What the shell passes per square metre once the air is taken out. */
import type { Estimate } from '../assessment.ts';
import type { Design } from '../fabric/index.ts';

export interface MeanTransmittance {
  /** Of fabric and thermal bridges over the exposed area [W/(m²K)]. */
  readonly measured: Estimate;
  /** The same as drawn [W/(m²K)]. */
  readonly drawn: number;
  /** What was taken off for the air, and between what it may really have been [W/K]. */
  readonly ventilation: Estimate;
}

/**
 * What really passes over what is drawn or stated [–], 95 %. PRACTICE: nobody measured it, and the ±30 % of a stated air
 * change left one mean transmittance of five outside its interval on the tuning seeds of the proving ground; with this
 * as many hold as of the heat losses themselves (93 %).
 */
const AIR = { least: 0.4, most: 2.5 } as const;

/**
 * Measured heat loss less the ventilation as drawn, over the exposed area: bridges stay in, as in the design's mean.
 * The interval allows for both, independent of each other. Null where nothing is exposed.
 *
 * @param heatLoss as measured [W/K]
 * @param asStated the ventilation in the design, in the state that the house was measured in [W/K]
 */
export function meanTransmittanceOf(
  heatLoss: Estimate,
  asStated: Estimate,
  { exposedArea, meanTransmittance }: Design,
): MeanTransmittance | null {
  if (meanTransmittance === null || exposedArea <= 0) return null;
  const { value, low, high } = asStated;
  const ventilation = {
    value,
    low: Math.min(low, AIR.least * value),
    high: Math.max(high, AIR.most * value),
  };
  const below = Math.hypot(heatLoss.value - heatLoss.low, ventilation.high - ventilation.value);
  const above = Math.hypot(heatLoss.high - heatLoss.value, ventilation.value - ventilation.low);
  const shell = heatLoss.value - ventilation.value;
  const over = (it: number) => Math.max(0, it) / exposedArea;
  return {
    measured: { value: over(shell), low: over(shell - below), high: over(shell + above) },
    drawn: meanTransmittance,
    ventilation,
  };
}
