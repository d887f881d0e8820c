/** Nights of one time constant under a swinging outdoor temperature, with a logger's noise. Invented. */
import { freeCooling } from '../../../src/cooling/index.ts';
import { random } from '../../proving/random.ts';

export interface InventedNight {
  /** [s] */
  readonly time: readonly number[];
  /** [°C] */
  readonly indoor: readonly number[];
  readonly outdoor: readonly number[];
}

export const TRUE_HOURS = 40;

export function inventedNights(count: number): InventedNight[] {
  const draws = random(1, 'nights of the bench');
  const time = Float64Array.from({ length: 61 }, (_, i) => i * 600);
  return Array.from({ length: count }, () => {
    const cold = 4 + 3 * draws.normal();
    const outdoor = time.map((t) => cold + 3 * Math.cos((2 * Math.PI * t) / 86_400));
    const exact = freeCooling(time, outdoor, TRUE_HOURS * 3600, 20 + draws.normal());
    const indoor = exact.map((it) => it + 0.02 * draws.normal());
    return { time: Array.from(time), indoor: Array.from(indoor), outdoor: Array.from(outdoor) };
  });
}
