/** A running meter cannot go up and come back. */
import { sortedSteps, usualStep } from './steps.ts';

/** How far beyond its neighbours, in usual steps of the meter and in the step between the neighbours. */
const USUAL_STEPS = 20;
const NEIGHBOUR_STEPS = 10;

/**
 * Up to `widest` readings far above both neighbours, or far below both, while the neighbours themselves rise. A meter
 * that begins again at 0 or is exchanged does not come back and is kept; so is one that never runs.
 *
 * @param value counter readings [J]
 */
export function meterSpikes(value: Float64Array, widest: number): number[] {
  const usual = usualStep(sortedSteps(value));
  const found: number[] = [];
  let before = 0;
  for (let first = 1; first < value.length - 1; ) {
    let after = first + 1;
    const end = Math.min(first + widest, value.length - 1);
    while (after <= end && !isOff(value, before, first, after, usual)) after++;
    if (after <= end) while (first < after) found.push(first++);
    else before = first++;
  }
  return found;
}

function isOff(value: Float64Array, before: number, first: number, after: number, usual: number): boolean {
  const low = value[before];
  const high = value[after];
  if (high < low) return false;
  const far = USUAL_STEPS * usual + NEIGHBOUR_STEPS * (high - low);
  const above = value[first] > high;
  for (let i = first; i < after; i++) if ((above ? value[i] - high : low - value[i]) <= far) return false;
  return true;
}
