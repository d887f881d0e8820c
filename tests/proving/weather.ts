/** Invented weather: seasonal mean, passing highs and lows, day and night, cloud and wind. */
import { saturation } from './humidity.ts';
import { between } from './loggers.ts';
import { type Random, random } from './random.ts';
import { diffuseIrradiance, globalIrradiance, type SunPosition, sunPosition } from './sun.ts';

export interface Climate {
  /** Of the year [°C], and by how much midwinter lies below it [K]. */
  readonly meanTemperature: number;
  readonly seasonalSwing: number;
  /** Deviation of the passing weather [K]. */
  readonly synopticDeviation: number;
  /** At 10 m over open land [m/s]. */
  readonly meanWindSpeed: number;
  /** Moves the cloud: 0 gives about half, 1 mostly overcast. */
  readonly cloudiness: number;
}

/** Like the middle of England in winter. */
export const inlandEngland: Climate = {
  meanTemperature: 10.3,
  seasonalSwing: 5.4,
  synopticDeviation: 2.6,
  meanWindSpeed: 4.2,
  cloudiness: 0.5,
};

export interface Place {
  readonly latitude: number;
  readonly longitude: number;
}

/** Weather at every step; arrays of one length. Value k holds at `start + k * step`. */
export interface Weather {
  readonly start: number;
  readonly step: number;
  /** [°C] */
  readonly airTemperature: Float64Array;
  /** At 10 m over open land [m/s]. */
  readonly windSpeed: Float64Array;
  /** 0 to 1 */
  readonly cloud: Float64Array;
  /** [kg/m³] */
  readonly vapour: Float64Array;
  /** [°C] */
  readonly dewPoint: Float64Array;
  /** On the level [W/m²]. */
  readonly global: Float64Array;
  readonly diffuse: Float64Array;
  readonly sun: readonly SunPosition[];
  /** Deep under the house [°C]. */
  readonly groundTemperature: Float64Array;
}

const day = 86400;
const hour = 3600;
/** Chance is drawn on this grid [s], so that a finer step sees the same weather. */
const grid = 600;

/** @param until the last instant is the last step before it [s since 1970 UTC] */
export function makeWeather(
  seed: number,
  climate: Climate,
  place: Place,
  start: number,
  until: number,
  step: number,
): Weather {
  const n = Math.floor((until - start) / step);
  const stream = (name: string, memory: number, smoothing: number) =>
    wander(random(seed, `weather ${name}`), n, step, memory, smoothing);
  const synoptic = stream('synoptic', 2.5 * day, 5 * hour);
  const shortTerm = stream('short', 2 * hour, 0.5 * hour);
  const clouds = stream('cloud', 9 * hour, 0.3 * hour);
  const winds = stream('wind', 14 * hour, 0.5 * hour);
  const moistures = stream('moisture', 20 * hour, 2 * hour);
  const weather: Weather = {
    start,
    step,
    airTemperature: new Float64Array(n),
    windSpeed: new Float64Array(n),
    cloud: new Float64Array(n),
    vapour: new Float64Array(n),
    dewPoint: new Float64Array(n),
    global: new Float64Array(n),
    diffuse: new Float64Array(n),
    groundTemperature: new Float64Array(n),
    sun: Array.from({ length: n }, (_, k) => sunPosition(start + k * step, place.latitude, place.longitude)),
  };
  const spread = 0.5; // of the logarithm of the wind speed
  let slowCloud = 0.6;
  for (let k = 0; k < n; k++) {
    const time = start + k * step;
    const solarHour = time / hour + place.longitude / 15;
    const season = Math.cos((2 * Math.PI * (time / day - 20)) / 365.25); // 1 in the third week of January
    const cloud = 1 / (1 + Math.exp(-2.2 * (1.2 * clouds[k] + 0.35 * synoptic[k] + climate.cloudiness)));
    // What the day's swing answers to is the cloud of the last hours.
    slowCloud += ((cloud - slowCloud) * step) / (8 * hour);
    const swing = 0.7 + 2.8 * (1 - slowCloud);
    const passing =
      climate.meanTemperature - climate.seasonalSwing * season + climate.synopticDeviation * synoptic[k];
    const daily = swing * Math.cos((2 * Math.PI * (solarHour - 14.5)) / 24) - 1.2 * (1 - slowCloud);
    const temperature = passing + daily + 0.35 * shortTerm[k];
    const dewPoint = Math.min(temperature - 0.2, passing - 2 + 0.8 * moistures[k]);
    const windy =
      climate.meanWindSpeed * Math.exp(spread * (winds[k] + 0.25 * synoptic[k]) - spread ** 2 / 2);
    const sun = weather.sun[k];
    weather.airTemperature[k] = temperature;
    weather.cloud[k] = cloud;
    weather.windSpeed[k] = windy * (1 + 0.2 * Math.cos((2 * Math.PI * (solarHour - 14)) / 24));
    weather.dewPoint[k] = dewPoint;
    weather.vapour[k] = saturation(dewPoint);
    weather.global[k] = globalIrradiance(sun.altitude, cloud);
    weather.diffuse[k] = diffuseIrradiance(weather.global[k], sun.altitude);
    // A quarter of the year's swing is left at depth, about seven weeks late.
    const lateSeason = Math.cos((2 * Math.PI * (time / day - 70)) / 365.25);
    weather.groundTemperature[k] = climate.meanTemperature - 0.25 * climate.seasonalSwing * lateSeason;
  }
  return weather;
}

/** A first-order autoregression of deviation 1, made smooth over `smoothing` [s]; starts anywhere. */
export function wander(
  source: Random,
  n: number,
  step: number,
  memory: number,
  smoothing: number,
): Float64Array {
  const keep = Math.exp(-grid / memory);
  const kick = Math.sqrt(1 - keep * keep);
  // The smoothing takes from the variance what the two memories overlap.
  const restore = Math.sqrt((memory + smoothing) / memory);
  const values = new Float64Array(Math.ceil((n * step) / grid) + 1);
  let state = source.normal();
  let smooth = state;
  for (let k = 0; k < values.length; k++) {
    state = keep * state + kick * source.normal();
    smooth += (state - smooth) * (1 - Math.exp(-grid / smoothing));
    values[k] = restore * smooth;
  }
  return Float64Array.from({ length: n }, (_, k) => between(values, (k * step) / grid));
}
