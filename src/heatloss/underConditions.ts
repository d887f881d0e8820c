/** An estimate from readings alone, under what else is known of the house: mass that dries, gains that cannot be. */
import type { Estimate } from '../assessment.ts';
import type { StageNights } from '../cooling/index.ts';
import type { Design } from '../fabric/index.ts';
import type { House } from '../house.ts';
import { NORMAL_95 } from '../maths/logInterval.ts';
import type { HouseRecord } from '../series/record.ts';
import { airFlowOf } from './airFlow.ts';
import { differenceOver, dryingNotes, gainsNotes } from './conditionNotes.ts';
import { dryingSd, vapourExcess } from './drying.ts';
import type { HeatLossEstimate } from './estimate.ts';

/**
 * Notes on drying and gains beside each, and intervals that hold what drying may draw. The network has both of its own.
 *
 * @param heatLossAsDrawn with its vents as they were [W/K]; null when it is not known
 */
export function underConditions(
  estimates: readonly HeatLossEstimate[],
  {
    house,
    record,
    design,
    stage,
  }: { house: House; record: HouseRecord; design: Design | null; stage: StageNights },
  heatLossAsDrawn: number | null,
): HeatLossEstimate[] {
  const vapour = vapourExcess(record, stage, airFlowOf(house, design));
  const difference = differenceOver(record, stage, house);
  const drawn = dryingSd(house, [vapour]) / difference;
  const notes = [...gainsNotes(house, heatLossAsDrawn, difference), ...dryingNotes(house, vapour)];
  if (notes.length === 0) return [...estimates];
  return estimates.map((estimate) => ({
    ...estimate,
    heatLossCoefficient:
      drawn > 0 ? widened(estimate.heatLossCoefficient, drawn) : estimate.heatLossCoefficient,
    notes: [...estimate.notes, ...notes],
  }));
}

/** Heat that drying drew reads as loss: by a standard deviation of so much [W/K]. A known bias stays in its middle. */
function widened({ value, low, high }: Estimate, sd: number): Estimate {
  const middle = Math.sqrt(low * high);
  const factor = Math.exp(Math.hypot(Math.log(high / middle), (NORMAL_95 * sd) / value));
  return { value, low: middle / factor, high: middle * factor };
}
