/** How far loggers move a time constant: against the same fit over the same windows on the temperatures as they were. */
import type { StageEvidence } from '../../../src/assess.ts';
import { bridgeGaps } from '../../../src/cooling/driver.ts';
import { driverOf, fitDecay, type Neighbour, poolTimeConstants } from '../../../src/cooling/index.ts';
import { timesBetween } from '../../../src/series/grid.ts';
import type { HouseRecord } from '../../../src/series/record.ts';

/**
 * Relative; null where the stage has no time constant.
 *
 * @param neighbour as the stage was assessed with
 */
export function timeConstantError(
  { stage, pooled }: StageEvidence,
  noiseFree: HouseRecord,
  neighbour: Neighbour | null,
): number | null {
  if (pooled === null) return null;
  const driver = driverOf(noiseFree, neighbour);
  const refitted = stage.nights.map((night) => {
    if (!night.used || night.window === null) return { ...night, used: false };
    const { first, last } = night.window;
    const over = (series: Float64Array) => bridgeGaps(series.subarray(first, last + 1));
    const times = timesBetween(noiseFree.grid, first, last);
    return {
      ...night,
      fit: fitDecay(times, noiseFree.insideTemperature.subarray(first, last + 1), over(driver)),
    };
  });
  const without = poolTimeConstants(refitted, noiseFree.differenceSd);
  return without === null ? null : pooled.timeConstant.value / without.timeConstant.value - 1;
}
