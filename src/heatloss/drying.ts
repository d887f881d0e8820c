/** Plaster, screed and timber that dry draw heat: what was told of it, and what the air shows. */
import { absoluteHumidity, moistureExcess, vapourPressure } from '../air/index.ts';
import type { StageNights } from '../cooling/index.ts';
import type { House } from '../house.ts';
import type { HouseRecord, RoomSeries } from '../series/record.ts';
import type { AirFlow } from './airFlow.ts';

/** Vapour that the air takes along at night, and what it takes to evaporate it. */
export interface VapourExcess {
  /** Inside less outside [kg/m³]. */
  readonly density: number;
  /** Carried off by the air that the house exchanges [kg/s]. */
  readonly rate: number;
  /** No air change was stated: an ordinary one was taken. */
  readonly assumedAir: boolean;
  /** Drawn from the house, did all of it come out of the shell [W]. */
  readonly heat: number;
  /** Beyond what a dwelling in ordinary use holds at such an outdoor temperature. */
  readonly unusual: boolean;
}

/** Of water at room temperature [J/kg]. ISO 13788 and handbooks: 2.45 MJ/kg at 20 °C. */
const EVAPORATION = 2.45e6;
/** Dwellings with normal occupancy and ventilation. ISO 13788:2012, Annex A. */
const DWELLING = 2;
/** Humidity known all through so much of the nights is enough to speak of them [–]. */
const LEAST_KNOWN = 0.5;

/**
 * From the loggers of humidity inside and outdoors, over the nights that are used; null where either is missing. Nights,
 * because by day people wash, cook and open windows.
 *
 * @param air what the house exchanges; null where that is not known, and then nothing is said
 */
export function vapourExcess(
  record: HouseRecord,
  stage: StageNights,
  air: AirFlow | null,
): VapourExcess | null {
  if (air === null) return null;
  const inside = record.rooms.filter(({ place }) => place === 'inside');
  const outside = record.rooms.filter(({ place }) => place === 'outside');
  const windows = stage.nights.flatMap(({ used, window }) => (used && window !== null ? [window] : []));
  const instants = windows.flatMap(({ first, last }) =>
    Array.from({ length: last - first + 1 }, (_, i) => first + i),
  );
  const known = instants.flatMap((k) => {
    const density = meanDensity(inside, k) - meanDensity(outside, k);
    const temperature = record.outsideTemperature[k];
    return Number.isNaN(density) || Number.isNaN(temperature) ? [] : [{ density, temperature }];
  });
  if (known.length === 0 || known.length < LEAST_KNOWN * instants.length) return null;
  const mean = (of: (it: (typeof known)[number]) => number) =>
    known.reduce((sum, it) => sum + of(it), 0) / known.length;
  const density = mean((it) => it.density);
  const rate = Math.max(0, density) * air.flow;
  return {
    density,
    rate,
    assumedAir: air.assumed,
    heat: rate * EVAPORATION,
    unusual:
      density >
      moistureExcess(
        DWELLING,
        mean((it) => it.temperature),
      ).density,
  };
}

/** Water in the air of those rooms that logged it [kg/m³]; NaN where none did. */
function meanDensity(rooms: readonly RoomSeries[], k: number): number {
  const densities = rooms.flatMap(({ temperature, relativeHumidity }) => {
    const density =
      relativeHumidity === null
        ? Number.NaN
        : absoluteHumidity(temperature[k], vapourPressure(temperature[k], relativeHumidity[k]));
    return Number.isNaN(density) ? [] : [density];
  });
  return densities.reduce((sum, it) => sum + it, 0) / densities.length;
}

/** Ten litres a day take 280 W. How much it is nobody knows, so it widens [W]; after so many weeks it is little. */
const USUAL_DRYING = 150;
export const DRYING_WEEKS = 8;

/** Whether wet trades were told of that may still draw heat. */
export const stillDrying = ({ conditions }: House): boolean =>
  conditions?.wetTradesWithinWeeks !== undefined && conditions.wetTradesWithinWeeks <= DRYING_WEEKS;

/** How far the heat that drying draws may be off nothing: one standard deviation [W]. */
export function dryingSd(house: House, seen: readonly (VapourExcess | null)[]): number {
  const weeks = house.conditions?.wetTradesWithinWeeks ?? 0;
  const told = stillDrying(house) ? USUAL_DRYING * (1 - weeks / (DRYING_WEEKS + 1)) : 0;
  const shown = seen.map((it) => (it !== null && (it.unusual || told > 0) ? it.heat : 0));
  return Math.max(told, ...shown);
}
