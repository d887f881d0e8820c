/** How warm it is in the heated house next door. */
import { wander } from '../weather.ts';
import { hour } from './calendar.ts';
import { drawsOf } from './draws.ts';

/** Temperature of a neighbour at every step: people's evenings, and what they change from day to day [°C]. */
export function neighbourTemperature(seed: number, which: number, start: number, step: number, n: number) {
  const draws = drawsOf(seed, `neighbour ${which}`);
  const mean = draws.between(17.5, 21.5);
  const swing = draws.between(0.2, 1.2);
  const moods = wander(draws.source, n, step, 30 * hour, 2 * hour);
  return moods.map((mood, k) => {
    const solarHour = ((start + k * step) / hour) % 24;
    return mean + swing * Math.cos((2 * Math.PI * (solarHour - 19)) / 24) + 0.4 * mood;
  });
}
