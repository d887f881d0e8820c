/** An invented house whose loggers write temperature and humidity every minute, the same on every machine. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sample from '../../../sample-logs/house.json' with { type: 'json' };
import { random } from '../../proving/random.ts';

export interface InventedHouse {
  readonly name: string;
  /** Rooms, then one outside, then one in the roof. */
  readonly loggers: number;
  /** From 2016 on. */
  readonly days: number;
}

/** 2016 begins, in UTC [s since 1970]. */
export const START = Date.UTC(2016, 0, 1) / 1000;
export const MINUTES_A_DAY = 1440;
export const YEAR = 365;

/** One reading a minute from START on, with the decimals of a log. */
export interface LoggerReadings {
  /** °C */
  readonly temperature: Float64Array;
  /** % */
  readonly humidity: Float64Array;
}

/** Each logger's readings, made as they are asked for: ten years of all are a lot to hold. */
export function* readingsOf({ name, loggers, days }: InventedHouse): Generator<LoggerReadings> {
  const outside = outdoors(days);
  for (let logger = 0; logger < loggers; logger++) {
    const { normal } = random(logger, name);
    const air = isOutside(logger, loggers) ? outside : indoors(outside, logger, logger === loggers - 1);
    const temperature = air.map((it) => round(it + 0.02 * normal(), 100));
    yield { temperature, humidity: temperature.map((it) => round(75 - 1.3 * it + 0.2 * normal(), 10)) };
  }
}

const isOutside = (logger: number, loggers: number) => logger === loggers - 2;
const round = (value: number, perUnit: number) => Math.round(value * perUnit) / perUnit;
const wave = (turns: number) => 2 * Math.PI * turns;

function outdoors(days: number): Float64Array {
  const { normal } = random(1, 'the weather of the bench');
  let drift = 0;
  return new Float64Array(days * MINUTES_A_DAY).map((_, i) => {
    const day = i / MINUTES_A_DAY;
    drift = 0.9997 * drift + 0.05 * normal();
    return 9 - 7 * Math.cos(wave(day / YEAR)) - 2.5 * Math.cos(wave(day - 0.1)) + drift;
  });
}

/** Falls towards the air outside; a room is held at its temperature from seven to ten. */
function indoors(outside: Float64Array, logger: number, isRoof: boolean): Float64Array {
  const minutes = 60 * (isRoof ? 4 : 30 + 3 * logger);
  const wanted = isRoof ? Number.NEGATIVE_INFINITY : 19 + logger / 4;
  let air = isRoof ? outside[0] : wanted;
  return outside.map((it, i) => {
    air += (it - air) / minutes;
    const hour = (i / 60) % 24;
    if (hour >= 7 && hour < 22 && air < wanted) air += Math.min(0.02, wanted - air);
    return air;
  });
}

/**
 * Writes a house folder: the sample house's design, and an export for each year of each logger.
 *
 * @param step minutes from one reading to the next; a day is a multiple of it
 * @returns how many readings it holds
 */
export function writeHouse(folder: string, house: InventedHouse, step = 1): number {
  const { name, loggers, days } = house;
  mkdirSync(folder, { recursive: true });
  const entries = Array.from(readingsOf(house), ({ temperature, humidity }, logger) => {
    const files: string[] = [];
    for (let from = 0; from < days; from += YEAR) {
      files.push(`logger-${logger + 1}-${1 + from / YEAR}.csv`);
      writeFileSync(
        join(folder, files[files.length - 1]),
        logText(temperature, humidity, from, Math.min(days, from + YEAR), step),
      );
    }
    const place = isOutside(logger, loggers) ? 'outside' : logger === loggers - 1 ? 'void' : 'inside';
    const [file, ...continuedIn] = files;
    const where = { inside: { room: `Room ${logger + 1}` }, outside: {}, void: { element: 'Ceiling' } };
    return { file, continuedIn, place, timeZone: 'UTC', ...where[place] };
  });
  const { weather, heat, notes, stages, ...design } = sample;
  writeFileSync(join(folder, 'house.json'), JSON.stringify({ ...design, name, loggers: entries }));
  return (loggers * days * MINUTES_A_DAY * 2) / step;
}

function logText(
  temperature: Float64Array,
  humidity: Float64Array,
  fromDay: number,
  toDay: number,
  step: number,
): string {
  const rows = ['Time,Temperature (°C),Humidity (%)'];
  for (let day = fromDay; day < toDay; day++) {
    const date = new Date((START + day * 86_400) * 1000).toISOString().slice(0, 10);
    for (let minute = 0; minute < MINUTES_A_DAY; minute += step) {
      const i = day * MINUTES_A_DAY + minute;
      rows.push(`${date} ${times[minute]},${temperature[i].toFixed(2)},${humidity[i].toFixed(1)}`);
    }
  }
  return `${rows.join('\n')}\n`;
}

const two = (n: number) => String(n).padStart(2, '0');
const times = Array.from({ length: MINUTES_A_DAY }, (_, i) => `${two(Math.floor(i / 60))}:${two(i % 60)}`);
