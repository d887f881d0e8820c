/** The power that keeps the house as drawn warm on a given day. */
import type { Estimate } from '../assessment.ts';
import type { Design } from './design.ts';
import type { Neighbour } from './fromHouse.ts';

export interface DesignDay {
  /** Of the air [°C]. */
  readonly insideTemperature: number;
  /** [°C] */
  readonly outsideTemperature: number;
  /** Beyond walls to heated neighbours; as warm as inside where left out. */
  readonly neighbour?: Neighbour;
}

/**
 * Steady heat load [W] with 95 % of the design's own doubt; null where the design has no heat loss.
 *
 * No allowance for heating up again, and nothing taken off for sun and people.
 *
 * @see EN 12831-1:2017, simplified: transmission and ventilation by the same difference
 */
export function designHeatLoad(design: Design, day: DesignDay): Estimate | null {
  const { heatLoss } = design.ranges;
  const next = neighbourFlow(design, day);
  if (heatLoss === null || next === null) return null;
  const difference = day.insideTemperature - day.outsideTemperature;
  const value = heatLoss.value * difference + next.value;
  const below = Math.hypot((heatLoss.value - heatLoss.low) * difference, next.value - next.low);
  const above = Math.hypot((heatLoss.high - heatLoss.value) * difference, next.high - next.value);
  return difference >= 0
    ? { value, low: value - below, high: value + above }
    : { value, low: value - above, high: value + below };
}

/**
 * Heat to heated neighbours [W], negative when they give some: which is in no heat loss coefficient, but
 * widens whatever is measured. Null where such an element has no transmittance.
 */
export function neighbourFlow(
  { toNeighbours }: Design,
  { insideTemperature, neighbour }: DesignDay,
): Estimate | null {
  if (toNeighbours === null) return null;
  if (neighbour === undefined) return { value: 0, low: 0, high: 0 };
  const value = toNeighbours * (insideTemperature - neighbour.temperature);
  const off = toNeighbours * neighbour.plusMinus;
  return { value, low: value - off, high: value + off };
}
