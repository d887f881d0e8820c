/** An invented year of indoor air, one reading a minute, the same on every machine. */
import { random } from '../../proving/random.ts';

/** 2026 begins, in UTC [s since 1970]. */
export const START = Date.UTC(2026, 0, 1) / 1000;
export const MINUTES = 525_600;

export interface Year {
  /** °C */
  readonly temperature: Float64Array;
  /** % */
  readonly humidity: Float64Array;
}

export function yearOfMinutes(): Year {
  const { normal } = random(4, 'a year of minutes');
  const temperature = new Float64Array(MINUTES);
  const humidity = new Float64Array(MINUTES);
  let drift = 0;
  for (let i = 0; i < MINUTES; i++) {
    const days = i / 1440;
    drift = 0.999 * drift + 0.02 * normal();
    temperature[i] = 20.5 - 2.5 * Math.cos(wave(days / 365)) - 1.2 * Math.cos(wave(days)) + drift;
    humidity[i] = 48 - 8 * Math.cos(wave(days / 365)) + 4 * Math.cos(wave(days)) - 5 * drift;
  }
  return { temperature, humidity };
}

const wave = (turns: number) => 2 * Math.PI * turns;
