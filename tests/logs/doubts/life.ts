/** An invented room with people in it: what happens to an honest logger. */
import type { Series } from '../../../src/logs/doubts/index.ts';
import { random } from '../../proving/random.ts';

const DAY = 86400;
const MINUTE = 60;

/** Of what happens, by the minute. */
export interface Room {
  /** [°C] */
  readonly temperature: Float64Array;
  /** 0 to 1 */
  readonly humidity: Float64Array;
}

/**
 * Day and night, heating that switches, and each day a shower (up to 45 % more humidity within minutes, gone with a
 * half-life of 10 to 25 minutes), an opened window (up to 8 K colder) and on some days the sun on the logger for up
 * to an hour (up to 12 K), each through the sensor's own lag of 8 minutes (humidity: 2).
 */
export function livedInRoom(seed: number, days: number): Room {
  const draws = random(seed, 'lived-in room');
  const n = (days * DAY) / MINUTE;
  const temperature = new Float64Array(n);
  const humidity = new Float64Array(n);
  const between = (low: number, high: number) => low + (high - low) * draws.uniform();
  let drift = 0;
  for (let i = 0; i < n; i++) {
    drift += -drift / 2000 + 0.02 * draws.normal();
    temperature[i] = 18.5 + 1.5 * Math.sin((2 * Math.PI * i) / 1440) + drift;
    humidity[i] = 0.45 + 0.03 * Math.sin((2 * Math.PI * i) / 1440 + 1) - 0.01 * drift;
  }
  for (let day = 0; day < days; day++) {
    const at = (from: number, to: number) => Math.floor(1440 * day + 60 * between(from, to));
    event(humidity, at(6, 9), between(4, 12), between(0.1, 0.45), between(14, 36));
    event(temperature, at(9, 18), between(3, 30), -between(1, 8), between(10, 30));
    if (draws.uniform() < 0.3)
      event(temperature, at(12, 16), between(10, 60), between(2, 12), between(5, 15));
  }
  lag(temperature, 8);
  lag(humidity, 2);
  return { temperature, humidity: humidity.map((it) => Math.min(1, it)) };
}

/** Something that begins at once, lasts, and dies away [minutes]. */
function event(values: Float64Array, from: number, lasts: number, height: number, decay: number) {
  for (let i = from; i < Math.min(values.length, from + 8 * decay); i++)
    values[i] += height * Math.exp(-Math.max(0, i - from - lasts) / decay);
}

function lag(values: Float64Array, minutes: number) {
  for (let i = 1; i < values.length; i++)
    values[i] = values[i - 1] + (values[i] - values[i - 1]) * (1 - Math.exp(-1 / minutes));
}

/** What a logger shows of a room every `interval` minutes; steps and noise in °C and 0 to 1. */
export function logged(
  seed: number,
  room: Room,
  interval: number,
  step = { temperature: 0.1, humidity: 0.005 },
  noise = { temperature: 0.03, humidity: 0.003 },
): { readonly temperature: Series; readonly humidity: Series } {
  const draws = random(seed, `logger every ${interval}`);
  const length = Math.floor(room.temperature.length / interval);
  const time = Float64Array.from({ length }, (_, k) => 1_767_225_600 + 60 * interval * k);
  const shown = (quantity: 'temperature' | 'humidity'): Series => ({
    quantity,
    time,
    value: time.map((_, k) => {
      const value = room[quantity][k * interval] + noise[quantity] * draws.normal();
      return Math.round(value / step[quantity]) * step[quantity];
    }),
  });
  return { temperature: shown('temperature'), humidity: shown('humidity') };
}
