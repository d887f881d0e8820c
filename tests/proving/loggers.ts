/** What a logger makes of the air around it. */
import { type Random, random } from './random.ts';

export interface LoggerKind {
  /** Of the sensor in its housing [s]. */
  readonly timeConstant: number;
  /** Deviations of one logger from the truth, and of one reading from the next [K] and [0 to 1]. */
  readonly biasDeviation: number;
  readonly noise: number;
  readonly humidityBiasDeviation: number;
  readonly humidityNoise: number;
  /** Steps of the display [K] and [0 to 1]. */
  readonly resolution: number;
  readonly humidityResolution: number;
  /** Between readings [s]. */
  readonly interval: number;
  /** Its clock less true time [s]. */
  readonly clockError: number;
}

export const ordinaryLogger: LoggerKind = {
  timeConstant: 480,
  biasDeviation: 0.15,
  noise: 0.03,
  humidityBiasDeviation: 0.015,
  humidityNoise: 0.003,
  resolution: 0.1,
  humidityResolution: 0.005,
  interval: 600,
  clockError: 0,
};

/** Value k of an array holds at `start + k * step`. */
export interface Trace {
  readonly start: number;
  readonly step: number;
  readonly temperature: Float64Array;
  /** 0 to 1 */
  readonly relativeHumidity: Float64Array;
}

export interface Reading {
  /** By the logger's clock [s since 1970 UTC]. */
  readonly time: number;
  readonly temperature: number;
  readonly relativeHumidity: number;
}

/**
 * Readings at every whole interval of the logger's clock from `from` to `to`, both included.
 *
 * @param name tells one logger's bias and noise from another's
 */
export function readLogger(
  seed: number,
  name: string,
  kind: LoggerKind,
  trace: Trace,
  from: number,
  to: number,
): Reading[] {
  const draws = random(seed, `logger ${name}`);
  const temperature = {
    values: lagged(trace.temperature, trace.step, kind.timeConstant),
    bias: kind.biasDeviation * draws.normal(),
  };
  const humidity = {
    values: lagged(trace.relativeHumidity, trace.step, kind.timeConstant),
    bias: kind.humidityBiasDeviation * draws.normal(),
  };
  const readings: Reading[] = [];
  for (let time = Math.ceil(from / kind.interval) * kind.interval; time <= to; time += kind.interval) {
    const place = (time - kind.clockError - trace.start) / trace.step;
    const read = ({ values, bias }: { values: Float64Array; bias: number }, noise: number, random: Random) =>
      between(values, place) + bias + noise * random.normal();
    readings.push({
      time,
      temperature: rounded(read(temperature, kind.noise, draws), kind.resolution),
      relativeHumidity: rounded(
        Math.min(1, Math.max(0, read(humidity, kind.humidityNoise, draws))),
        kind.humidityResolution,
      ),
    });
  }
  return readings;
}

/** A first-order lag. */
function lagged(values: Float64Array, step: number, timeConstant: number): Float64Array {
  const pace = 1 - Math.exp(-step / timeConstant);
  let state = values[0];
  return values.map((value) => {
    state += (value - state) * pace;
    return state;
  });
}

/** Value at a fractional place in the array. */
export function between(values: Float64Array, place: number): number {
  const k = Math.floor(place);
  if (k < 0 || k + 1 >= values.length) {
    if (place === values.length - 1) return values[k];
    throw new RangeError(`place ${place} lies outside the ${values.length} values`);
  }
  return values[k] + (place - k) * (values[k + 1] - values[k]);
}

const rounded = (value: number, resolution: number) => Math.round(value / resolution) * resolution;
