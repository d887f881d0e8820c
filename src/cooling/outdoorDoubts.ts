/** Doubts in the outdoor temperature of a night, which drives its curve. */
import { indexAt } from '../series/grid.ts';
import type { HouseRecord } from '../series/record.ts';
import type { Night } from '../sky/nights.ts';
import type { NightReason } from './reasons.ts';
import type { CoolingWindow } from './window.ts';

/** No weather does this within ten minutes [K]. */
const JUMP = 5;
/** A record that varies by more than this is not of a climate chamber [K]. */
const WEATHER = 2;
/** It may be warmer outside for this long [s]: a front, a passing cloud's radiation. */
const LONGEST_ABOVE = 3600;

/** @param indoor and outdoor over the window [°C], NaN where missing */
export function outdoorDoubts(record: HouseRecord, night: Night, window: CoolingWindow): NightReason[] {
  const { grid, insideTemperature, outsideTemperature } = record;
  const indoor = insideTemperature.subarray(window.first, window.last + 1);
  const outdoor = outsideTemperature.subarray(window.first, window.last + 1);
  const jump = Math.max(0, ...outdoor.subarray(1).map((it, i) => Math.abs(it - outdoor[i]) || 0));
  const above = outdoor.filter((it, i) => it > indoor[i]).length * grid.step;
  const reasons: (NightReason | null)[] = [
    stoodStill(record, night),
    jump > JUMP ? { code: 'outside-jumped', jump } : null,
    above > LONGEST_ABOVE ? { code: 'outside-above-inside', duration: above } : null,
  ];
  return reasons.filter((reason) => reason !== null);
}

/** From noon to sunrise one and the same value: the logger stopped, or lies where no weather comes. */
function stoodStill({ grid, outsideTemperature }: HouseRecord, night: Night): NightReason | null {
  const first = Math.max(0, indexAt(grid, night.noon));
  const last = Math.min(grid.length - 1, indexAt(grid, night.sunrise));
  const [low, high] = rangeOf(outsideTemperature.subarray(first, last + 1));
  if (!(high - low < 1e-6)) return null;
  const [lowest, highest] = rangeOf(outsideTemperature);
  if (!(highest - lowest > WEATHER)) return null;
  return { code: 'outside-stood-still', temperature: low, duration: (last - first) * grid.step };
}

function rangeOf(values: Float64Array): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}
