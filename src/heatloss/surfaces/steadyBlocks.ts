/** The hours in which an element is near enough to steady: nights of a light one, whole days of a heavy one. */
import type { StageNights } from '../../cooling/index.ts';
import type { ElementDesign } from '../../fabric/index.ts';
import type { House } from '../../house.ts';
import { indexAt } from '../../series/grid.ts';
import type { HouseRecord, RoomSeries } from '../../series/record.ts';
import type { AirBothSides } from './airBothSides.ts';
import type { Block } from './averageMethod.ts';
import type { SurfaceNote } from './note.ts';

/** Below this the standard calls an element light [J/(m²K)], and only nights are read. ISO 9869-1:2014, 7.1; MEMORY. */
const LIGHT = 20e3;
/** A light element has forgotten the sun this long after sunset [s]. ISO 9869-1:2014, 7.1; MEMORY. */
const AFTER_SUNSET = 3600;
/** Air inside less air beyond, in the mean of a block [K]. PRACTICE. */
const LEAST_DIFFERENCE = 5;
/** A day's mean of global irradiance above which the sun is on the outer face [W/m²]. PRACTICE. */
const DULL = 40;
/** Share of a block's cells that must have all three temperatures. */
const LEAST_KNOWN = 0.95;
const DAY = 86_400; // [s]

export interface ToCut {
  readonly house: House;
  readonly record: HouseRecord;
  readonly stage: StageNights;
  readonly surface: RoomSeries;
  readonly element: ElementDesign;
  readonly air: AirBothSides;
  /** Rsi [m²K/W] */
  readonly resistance: number;
}

export interface SteadyBlocks {
  /** In the order of time, with the heat that the inside surface resistance lets through, q = (Ti − Tsi) / Rsi. */
  readonly blocks: readonly Block[];
  /** Of a heavy element, all of it [J/(m²K)]; null of a light one, and where its layers do not tell. */
  readonly capacity: number | null;
  readonly notes: readonly SurfaceNote[];
}

export function steadyBlocks(given: ToCut): SteadyBlocks {
  const { house, record, stage, element } = given;
  const nights = stage.nights.map(({ night }) => night);
  const capacity = capacityOf(element);
  const light = capacity !== null && capacity < LIGHT;
  const spans = light
    ? nights.map(({ sunset, sunrise }) => ({ from: sunset + AFTER_SUNSET, to: sunrise }))
    : nights.slice(1).flatMap(({ sunrise }, i) => {
        const from = nights[i].sunrise;
        return sunrise - from < 1.5 * DAY ? [{ from, to: sunrise }] : [];
      });
  const sunless = light || element.to !== 'outside' || facesAway(house, element.name);
  const dull = sunless ? spans : spans.filter((span) => isDull(record, span));
  return {
    blocks: dull.map((span) => blockOf(given, span)).filter((block) => block !== null),
    capacity: light ? null : capacity,
    notes: [
      light ? { code: 'surface-nights-read' } : { code: 'surface-days-read' },
      ...(capacity === null ? [{ code: 'surface-storage-not-judged' } as const] : []),
      ...(sunless || record.irradiance !== null ? [] : [{ code: 'surface-sun-not-known' } as const]),
    ],
  };
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** All of it, inside to outside [J/(m²K)]; null where the layers do not tell. */
function capacityOf({ buildUp }: ElementDesign): number | null {
  if (buildUp === null) return null;
  return buildUp.layers.reduce<number | null>((sum, layer) => {
    if (layer.kind === 'air' || sum === null) return sum;
    const { thickness, density, specificHeat } = layer;
    if (density === null || specificHeat === null || thickness === null) return null;
    return sum + thickness * density * specificHeat;
  }, 0);
}

/** An upright face towards the pole gets no sun in the heating season. */
function facesAway({ location, elements }: House, name: string): boolean {
  const it = elements?.find((element) => element.name === name);
  if (it?.orientationDeg === undefined || (it.tiltDeg ?? 90) < 80) return false;
  const fromPole = location.latitude >= 0 ? it.orientationDeg : it.orientationDeg - 180;
  return Math.cos((fromPole * Math.PI) / 180) >= Math.SQRT1_2 - 1e-9;
}

/** Where no irradiance was logged every day counts, and it is said. */
function isDull({ grid, irradiance }: HouseRecord, { from, to }: Span): boolean {
  if (irradiance === null) return true;
  const sun = irradiance.subarray(Math.max(0, indexAt(grid, from)), Math.max(0, indexAt(grid, to)));
  return sun.reduce((sum, it) => sum + it, 0) / sun.length <= DULL;
}

function blockOf({ record: { grid }, surface, air, resistance }: ToCut, { from, to }: Span): Block | null {
  const first = indexAt(grid, from);
  const last = indexAt(grid, to);
  if (first < 0 || last > grid.length) return null;
  let [flux, difference, both, known] = [0, 0, 0, 0];
  for (let i = first; i < last; i++) {
    const through = (air.inside[i] - surface.temperature[i]) / resistance;
    const across = air.inside[i] - air.beyond[i];
    if (Number.isNaN(through) || Number.isNaN(across)) continue;
    flux += through;
    difference += across;
    both += (surface.temperature[i] + air.beyond[i]) / 2;
    known++;
  }
  if (known < LEAST_KNOWN * (last - first) || known === 0) return null;
  if (difference / known < LEAST_DIFFERENCE) return null;
  return {
    heatFlux: flux / known,
    difference: difference / known,
    elementTemperature: both / known,
    duration: to - from,
  };
}
