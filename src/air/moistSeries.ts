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
  const isKnown = warmth.includes(Number.NaN) ? (_: number, i: number) => !Number.isNaN(warmth[i]) : null;
  const known = (values: Float64Array) => (isKnown === null ? values : values.filter(isKnown));
  const [time, celsius, relative] = [known(humidity.time), known(warmth), known(humidity.value)];
  const [absolute, dew] = [new Float64Array(time.length), new Float64Array(time.length)];
  // A loop, because a year of minutes passes here.
  for (let i = 0; i < time.length; i++) {
    const pressure = vapourPressure(celsius[i], relative[i]);
    absolute[i] = absoluteHumidity(celsius[i], pressure);
    dew[i] = pressure > 0 ? saturationTemperature(pressure) : Number.NaN;
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
  for (let i = 0; i < there.length; i++) there[i] = inside.absoluteHumidity[i] - there[i];
  return there;
}

/** Values of a series at rising instants, on the straight line between two readings; NaN beyond them and in gaps. */
function valuesAt({ time, value }: Readings, instants: Float64Array, longest: number): Float64Array {
  const found = new Float64Array(instants.length).fill(Number.NaN);
  for (let i = 0, next = 0; i < instants.length; i++) {
    const t = instants[i];
    while (next < time.length && time[next] < t) next++;
    if (next === time.length) break;
    if (time[next] === t) found[i] = value[next];
    else if (next > 0 && time[next] - time[next - 1] <= longest) {
      const share = (t - time[next - 1]) / (time[next] - time[next - 1]);
      found[i] = value[next - 1] + share * (value[next] - value[next - 1]);
    }
  }
  return found;
}
