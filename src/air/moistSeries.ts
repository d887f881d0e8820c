/** What a logger of temperature and humidity tells of the air around it, reading by reading. */
import { absoluteHumidity } from './contents.ts';
import { saturationTemperature } from './saturation.ts';
import { vapourPressure } from './vapour.ts';

/** Instants, strictly rising [s], and a value for each. */
export interface Readings {
  readonly time: Float64Array;
  readonly value: Float64Array;
}

/** One air over time; every array is as long as `time`. */
export interface MoistSeries {
  /** Strictly rising [s]. */
  readonly time: Float64Array;
  /** [°C] */
  readonly temperature: Float64Array;
  /** [–] */
  readonly relativeHumidity: Float64Array;
  /** [kg/m³] */
  readonly absoluteHumidity: Float64Array;
  /** [°C]; NaN for air without any vapour. */
  readonly dewPoint: Float64Array;
}

/**
 * The air at every reading of humidity for which there is a temperature: the same instant's, or on the straight line
 * between two readings.
 *
 * @param temperature [°C]
 * @param humidity    relative [–]
 * @param longest     between two readings of temperature that are joined [s]
 */
export function moistSeries(temperature: Readings, humidity: Readings, longest: number): MoistSeries {
  const warmth = valuesAt(temperature, humidity.time, longest);
  // Loops, because a year of minutes passes here.
  let count = 0;
  for (let i = 0; i < warmth.length; i++) if (!Number.isNaN(warmth[i])) count++;
  const array = () => new Float64Array(count);
  const [time, celsius, relative, absolute, dew] = [array(), array(), array(), array(), array()];
  for (let i = 0, n = 0; i < warmth.length; i++) {
    if (Number.isNaN(warmth[i])) continue;
    const pressure = vapourPressure(warmth[i], humidity.value[i]);
    time[n] = humidity.time[i];
    celsius[n] = warmth[i];
    relative[n] = humidity.value[i];
    absolute[n] = absoluteHumidity(warmth[i], pressure);
    dew[n] = pressure > 0 ? saturationTemperature(pressure) : Number.NaN;
    n++;
  }
  return {
    time,
    temperature: celsius,
    relativeHumidity: relative,
    absoluteHumidity: absolute,
    dewPoint: dew,
  };
}

/**
 * Vapour inside over outside [kg/m³] at each instant of the inside air; NaN where none is known outside.
 *
 * @param longest between two readings outside that are joined [s]
 * @see ISO 13788:2012, 3.1: Δv = vi − ve
 */
export function excessOver(inside: MoistSeries, outside: MoistSeries, longest: number): Float64Array {
  const there = valuesAt({ time: outside.time, value: outside.absoluteHumidity }, inside.time, longest);
  return there.map((it, i) => inside.absoluteHumidity[i] - it);
}

/** Values of a series at rising instants, on the straight line between two readings; NaN beyond them and in gaps. */
function valuesAt({ time, value }: Readings, instants: Float64Array, longest: number): Float64Array {
  let next = 0;
  return instants.map((t) => {
    while (next < time.length && time[next] < t) next++;
    if (next === time.length) return Number.NaN;
    if (time[next] === t) return value[next];
    if (next === 0 || time[next] - time[next - 1] > longest) return Number.NaN;
    const share = (t - time[next - 1]) / (time[next] - time[next - 1]);
    return value[next - 1] + share * (value[next] - value[next - 1]);
  });
}
