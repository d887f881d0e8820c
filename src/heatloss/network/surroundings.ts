/** What the record says about both sides of the shell, without gaps, as the network is driven by it. */
import { bridgeGaps } from '../../cooling/index.ts';
import { statedNeighbour } from '../../fabric/index.ts';
import type { House } from '../../house.ts';
import { type Grid, timeAt } from '../../series/grid.ts';
import type { HouseRecord } from '../../series/record.ts';
import { clearSkyIrradiance, irradianceOnPlane } from '../../sky/irradiance.ts';
import { type SunPosition, sunPosition } from '../../sky/sunPosition.ts';
import { sunIsLogged, USUAL_CLEARNESS } from '../usualSky.ts';
import type { NetworkElement } from './elements.ts';
import type { NetworkModel } from './model.ts';

export interface Surroundings {
  readonly inside: Float64Array;
  readonly outside: Float64Array;
  /** Wind speed over its mean; null where it was not logged [–]. */
  readonly wind: Float64Array | null;
  /** Irradiance on each element's plane [W/m²]; of the sky's clearness only where `sunLogged`. */
  readonly irradiance: readonly Float64Array[];
  readonly sunLogged: boolean;
  /** Logged beyond each element [°C]; null where no logger hangs there. */
  readonly logged: readonly (Float64Array | null)[];
  /** Far below a ground floor [°C]: about the mean of the year. */
  readonly ground: number;
  /** Of a heated neighbour where no logger hangs [°C], with how far it may be off: one standard deviation [K]. */
  readonly neighbour: { readonly temperature: number; readonly sd: number };
  /** Metered heat [W], 0 where none; NaN-free. */
  readonly heating: Float64Array;
}

/** From two of either side of what is stated, or of 20 °C where nothing is. PRACTICE. */
const USUAL_NEIGHBOUR = { temperature: 20, sd: 2 };
/** Nobody knows a temperature next door better [K]. */
const LEAST_NEIGHBOUR_SD = 0.1;
const YEAR = 365.25 * 86_400;
/** The coldest day after the turn of the year [s]; half a year on in the south. PRACTICE. */
const COLDEST = 20 * 86_400;

export function surroundingsOf(house: House, record: HouseRecord, model: NetworkModel): Surroundings {
  const { grid } = record;
  const outside = bridgeGaps(record.outsideTemperature);
  const suns = Array.from({ length: grid.length }, (_, k) => sunPosition(timeAt(grid, k), house.location));
  const clear = Float64Array.from(suns, clearSkyIrradiance);
  const sunLogged = record.irradiance !== null && sunIsLogged(record.irradiance, clear);
  const global =
    sunLogged && record.irradiance !== null
      ? record.irradiance.map((it) => (Number.isNaN(it) ? 0 : Math.max(0, it)))
      : clear.map((it) => USUAL_CLEARNESS * it);
  const planes = new Map<string, Float64Array>();
  const stated = statedNeighbour(house);
  return {
    inside: bridgeGaps(record.insideTemperature),
    outside,
    wind: relative(record.windSpeed),
    irradiance: model.elements.map((element) =>
      onPlane(element, global, suns, grid.start, grid.step, planes),
    ),
    sunLogged,
    logged: model.elements.map((element) => loggedBeyond(element, record, house)),
    ground: meanOfYear(outside, grid, house.location.latitude),
    neighbour:
      stated === null
        ? USUAL_NEIGHBOUR
        : { temperature: stated.temperature, sd: Math.max(LEAST_NEIGHBOUR_SD, stated.plusMinus / 2) },
    heating:
      record.heatingPower === null
        ? new Float64Array(grid.length)
        : record.heatingPower.map((it) => (Number.isNaN(it) ? 0 : it)),
  };
}

function relative(wind: Float64Array | null): Float64Array | null {
  if (wind === null || wind.every(Number.isNaN)) return null;
  const known = bridgeGaps(wind);
  const mean = known.reduce((sum, it) => sum + it, 0) / known.length;
  return mean > 0 ? known.map((it) => it / mean) : null;
}

/** Planes that face the same way are worked out once. */
function onPlane(
  { plane, beyond }: NetworkElement,
  global: Float64Array,
  suns: readonly SunPosition[],
  start: number,
  step: number,
  known: Map<string, Float64Array>,
): Float64Array {
  const key = beyond === 'outside' ? `${plane.tilt} ${plane.azimuth}` : 'none';
  const found = known.get(key);
  if (found !== undefined) return found;
  const falls =
    key === 'none'
      ? new Float64Array(global.length)
      : global.map((it, k) => irradianceOnPlane(it, suns[k], plane, start + k * step));
  known.set(key, falls);
  return falls;
}

/** A logger in the void or the house beyond: that of the element, or one that names no element. */
function loggedBeyond(
  { name, beyond }: NetworkElement,
  record: HouseRecord,
  house: House,
): Float64Array | null {
  if (beyond !== 'adjacent' && beyond !== 'void') return null;
  const fits = house.loggers.filter(({ place }) => place === beyond);
  const logger =
    fits.find(({ element }) => element === name) ?? fits.find(({ element }) => element === undefined);
  if (logger === undefined) return null;
  const room = record.rooms.find(
    (it) =>
      it.place === beyond &&
      it.file === logger.file &&
      (logger.room === undefined || it.room === logger.room),
  );
  return room === undefined || room.temperature.every(Number.isNaN) ? null : bridgeGaps(room.temperature);
}

/** The record's mean, and how far the season lies from the mean of the year at the latitude. PRACTICE. */
function meanOfYear(outside: Float64Array, grid: Grid, latitude: number): number {
  const mean = outside.reduce((sum, it) => sum + it, 0) / outside.length;
  const swing = Math.min(10, Math.abs(latitude) / 8);
  const seasons = outside.reduce(
    (sum, _, k) => sum + Math.cos((2 * Math.PI * (timeAt(grid, k) - COLDEST)) / YEAR),
    0,
  );
  const season = (seasons / outside.length) * (latitude < 0 ? -1 : 1);
  return mean + swing * season;
}
