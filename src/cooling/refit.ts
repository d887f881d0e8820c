/** A night's window fitted again: begun later, or on another series. */
import { timesBetween } from '../series/grid.ts';
import type { HouseRecord } from '../series/record.ts';
import { type DecayFit, fitDecay } from './decay.ts';
import { bridgeGaps } from './driver.ts';
import type { CoolingWindow } from './window.ts';

/**
 * @param inside the series to fit, on the record's grid [°C], NaN where missing
 * @param driver what it cools towards, on the same grid [°C]
 */
export function refit(
  { grid }: Pick<HouseRecord, 'grid'>,
  inside: Float64Array,
  driver: Float64Array,
  { first, last }: CoolingWindow,
): DecayFit {
  const driving = bridgeGaps(driver.subarray(first, last + 1));
  return fitDecay(timesBetween(grid, first, last), inside.subarray(first, last + 1), driving);
}
