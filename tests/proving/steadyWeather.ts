/** Weather that never changes: no sun, no wind unless given; for cases with a known answer. */
import type { Weather } from './weather.ts';

export function steadyWeather(temperature: number, duration: number, step: number, windSpeed = 0): Weather {
  const n = Math.round(duration / step) + 1;
  const all = (value: number) => new Float64Array(n).fill(value);
  return {
    start: 0,
    step,
    airTemperature: all(temperature),
    windSpeed: all(windSpeed),
    cloud: all(1),
    vapour: all(0.004),
    dewPoint: all(temperature - 2),
    global: all(0),
    diffuse: all(0),
    groundTemperature: all(temperature),
    sun: Array.from({ length: n }, () => ({ altitude: -1, bearing: 0 })),
  };
}
