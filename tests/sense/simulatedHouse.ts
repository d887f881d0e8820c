/** Simulated houses whose loggers are all in order; a test then plants its fault. */
import type { SensedLogger } from '../../src/sense/index.ts';
import { twoStoreyHouse, type WallKind } from '../proving/archetypes.ts';
import { saturation } from '../proving/humidity.ts';
import { ordinaryLogger, readLogger, type Trace } from '../proving/loggers.ts';
import { makeModel } from '../proving/makeModel.ts';
import { random } from '../proving/random.ts';
import { simulate } from '../proving/simulate.ts';
import { siteDays } from '../proving/use.ts';
import { inlandEngland, makeWeather } from '../proving/weather.ts';

export const place = { latitude: 52.2, longitude: -1.5, timeZone: 'Europe/London' };
export const DAY = 86_400;
export const HOUR = 3600;

const kinds: readonly WallKind[] = [
  'timber frame',
  'cavity',
  'solid, insulated outside',
  'solid, insulated inside',
];

export interface SimulatedHouse {
  /** Living room, kitchen, bedroom, roof void, outside. */
  readonly loggers: readonly SensedLogger[];
  /** Hourly, as a station some way off would have it; each value stands for the hour around its instant. */
  readonly weather: { readonly file: string; readonly temperature: Series; readonly irradiance: Series };
  /** Of the place outdoors and of the sun on it, every two minutes. */
  readonly air: Trace;
  readonly global: Float64Array;
}

interface Series {
  readonly time: Float64Array;
  readonly value: Float64Array;
}

export interface Circumstances {
  readonly days: number;
  /** Month of the year, 0 for January. */
  readonly month: number;
  readonly heated: boolean;
  readonly interval: number;
  /** The bedroom has hours of its own: an hour before the others in the morning, later in the evening. */
  readonly zoned: boolean;
}

const ordinary: Circumstances = { days: 16, month: 0, heated: true, interval: 600, zoned: false };
/** [s] */
const step = 120;

export function simulatedHouse(seed: number, other: Partial<Circumstances> = {}): SimulatedHouse {
  const { days, month, heated, interval, zoned } = { ...ordinary, ...other };
  const draws = random(seed, 'house of the sense');
  const between = (low: number, high: number) => low + (high - low) * draws.uniform();
  const start = Date.UTC(2027, month, 1 + Math.floor(20 * draws.uniform())) / 1000;
  const from = start + 5 * DAY;
  const to = from + days * DAY;
  const weather = makeWeather(
    seed,
    { ...inlandEngland, cloudiness: between(-0.3, 1) },
    place,
    start,
    to + 2 * HOUR,
    step,
  );
  const leaky = between(0.5, 4);
  const site = siteDays(seed, start, days + 6, []);
  const run = simulate({
    model: makeModel(twoStoreyHouse(kinds[seed % kinds.length]), {
      insulation: { 'External walls': between(0.9, 1.5), Ceiling: between(0.9, 1.5) },
      transmittance: {},
      bridges: between(0.8, 1.5),
      mass: between(0.85, 1.15),
    }),
    weather,
    use: {
      ...site,
      heating: heated ? site.heating : [],
      setTemperature: between(17, 21.5),
      band: 0.8,
      heatingPower: [3000, 2500, zoned ? 0 : 3000, 0],
      metered: zoned ? bedroomHours(seed, start, days + 6) : [],
      constantGains: [25, 35, 0, 0],
      workingLeakage: 1.8,
    },
    shells: [{ from: 0, leakage: { stack: 0.004 * leaky, wind: 0.0028 * leaky, intoVoid: 0.2 } }],
    films: 'natural',
    startTemperature: heated ? 15 : weather.airTemperature[0],
  });
  const shade = weather.airTemperature.map((value, k) => value + 0.0015 * weather.global[k]);
  const air: Trace = {
    start,
    step,
    temperature: shade,
    relativeHumidity: weather.vapour.map((vapour, k) => Math.min(1, vapour / saturation(shade[k]))),
  };
  const logger = (file: string, where: SensedLogger['place'], trace: Trace) =>
    asLogger(
      file,
      where,
      readLogger(seed, file, { ...ordinaryLogger, interval }, trace, from + HOUR * between(0, 1), to),
    );
  const zone = (z: number): Trace => ({
    start,
    step,
    temperature: run.airTemperature[z],
    relativeHumidity: run.relativeHumidity[z],
  });
  const hourly = (values: Float64Array, digits: number): Series => {
    const time = Float64Array.from({ length: (to - from) / HOUR }, (_, k) => from + (k + 0.5) * HOUR);
    const mean = (t: number) => {
      const k = (t - start) / step;
      const half = HOUR / 2 / step;
      const hour = values.subarray(k - half, k + half);
      return Number((hour.reduce((sum, it) => sum + it, 0) / hour.length).toFixed(digits));
    };
    return { time, value: time.map(mean) };
  };
  return {
    loggers: [
      logger('living.csv', 'inside', zone(0)),
      logger('kitchen.csv', 'inside', zone(1)),
      logger('bedroom.csv', 'inside', zone(2)),
      logger('void.csv', 'void', zone(3)),
      logger('outside.csv', 'outside', air),
    ],
    weather: {
      file: 'weather.csv',
      temperature: hourly(
        weather.airTemperature.map((it) => it - 0.3),
        1,
      ),
      irradiance: hourly(weather.global, 0),
    },
    air,
    global: weather.global,
  };
}

function bedroomHours(seed: number, start: number, days: number) {
  const draws = random(seed, 'bedroom heating');
  const shares = [0, 0, 1, 0];
  return Array.from({ length: days }, (_, k) => start + k * DAY).flatMap((midnight) => {
    const at = (hours: number) => midnight + Math.round((hours + 0.2 * draws.normal()) * 4) * (HOUR / 4);
    return [
      { from: at(5.5), to: at(7.5), power: 1800, shares },
      { from: at(19.5), to: at(22), power: 1800, shares },
    ];
  });
}

export function asLogger(
  file: string,
  where: SensedLogger['place'],
  readings: readonly { time: number; temperature: number; relativeHumidity: number }[],
): SensedLogger {
  const time = Float64Array.from(readings, (it) => it.time);
  return {
    file,
    place: where,
    temperature: { time, value: Float64Array.from(readings, (it) => Number(it.temperature.toFixed(2))) },
    relativeHumidity: { time, value: Float64Array.from(readings, (it) => it.relativeHumidity) },
  };
}

/** The same logger with its temperatures changed. */
export const changed = (
  logger: SensedLogger,
  by: (temperature: number, time: number) => number,
): SensedLogger => ({
  ...logger,
  temperature: {
    ...logger.temperature,
    value: logger.temperature.value.map((it, i) => Number(by(it, logger.temperature.time[i]).toFixed(1))),
  },
});

/** The same logger with a clock that is ahead by so much [s]. */
export const shifted = (logger: SensedLogger, ahead: number): SensedLogger => {
  const move = (readings: Series) => ({ ...readings, time: readings.time.map((t) => t + ahead) });
  return {
    ...logger,
    temperature: move(logger.temperature),
    ...(logger.relativeHumidity && { relativeHumidity: move(logger.relativeHumidity) }),
  };
};
