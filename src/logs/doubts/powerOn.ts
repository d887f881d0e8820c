/** A digital thermometer that was read before its first conversion. */
import type { Series } from './series.ts';

/** What its register holds until then [°C]; 185 °F and 358.15 K are the same. */
const POWER_ON = 85;
/** Of the conversion from °F and K [K]. */
const ROUNDING = 1e-6;
/** Below it all other readings must stay by this much [K]: a heater that rises through 85 °C comes nearer. */
const FAR = 30;

/** Temperatures of exactly 85 °C in a channel whose other readings all stay more than 30 K below. */
export function powerOnReadings({ quantity, value }: Series): number[] {
  if (quantity !== 'temperature') return [];
  const found: number[] = [];
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < value.length; i++) {
    if (Math.abs(value[i] - POWER_ON) < ROUNDING) found.push(i);
    else if (value[i] > highest) highest = value[i];
  }
  const hasOthers = found.length < value.length;
  return hasOthers && highest < POWER_ON - FAR ? found : [];
}
