/** A house as drawn, and how its building strays from the drawings. */
import type { DesignElement, Layer, Partition } from '../../src/house.ts';
import type { Exchange, Vents } from './model.ts';
import {
  evenLayers,
  insideResistance,
  layersResistance,
  outsideResistance,
  slabTransmittance,
  suspendedTransmittance,
  transmittance,
} from './transmittance.ts';

export interface Room {
  readonly name: string;
  /** [m²] and [m³] */
  readonly floorArea: number;
  readonly volume: number;
  readonly inletShare: number;
  /** The share of its air that goes on up: to the room named, or into the roof void; none when left out. */
  readonly upTo?: string;
  readonly upShare?: number;
}

/** Where a part of an element or partition lies. */
export interface PlacedPart {
  /** Of the element or partition. */
  readonly of: string;
  /** [m²] */
  readonly area: number;
  readonly room: string;
  /** From north, clockwise, and from the level [degrees]; of a face to the outside, upright when left out. */
  readonly bearing?: number;
  readonly tilt?: number;
  /** Which of the heated neighbours lies beyond; the first when left out. */
  readonly neighbour?: number;
  /** The room on the other side of a partition. */
  readonly beyond?: string;
}

export interface GroundFloor {
  readonly name: string;
  readonly layers: readonly Layer[];
  readonly perimeter: number;
  /** How much of the ground under a slab follows the last week outdoors; none when left out. */
  readonly edgeShare?: number;
  /** Over a space that is ventilated from outside. */
  readonly suspended?: boolean;
}

/** A roof void over the element named, with its slopes. */
export interface RoofVoid {
  readonly over: string;
  readonly volume: number;
  readonly vents: Vents;
  readonly slopes: readonly { readonly bearing: number; readonly tilt: number; readonly area: number }[];
  readonly layers: readonly Layer[];
}

export interface Plan {
  readonly rooms: readonly Room[];
  /** With a `uValue` or a build-up; the areas come from the parts. The ground floor stands below. */
  readonly elements: readonly Omit<DesignElement, 'areaM2'>[];
  readonly groundFloor?: GroundFloor;
  readonly partitions: readonly Omit<Partition, 'areaM2'>[];
  readonly parts: readonly PlacedPart[];
  readonly roofVoid?: RoofVoid;
  /** [W/K] */
  readonly bridges: number;
  readonly exchanges: readonly (Omit<Exchange, 'lower' | 'upper'> & {
    readonly lower: string;
    readonly upper: string;
  })[];
}

/** One that stands on the ground under a roof void. */
export type DetachedPlan = Plan & { readonly groundFloor: GroundFloor; readonly roofVoid: RoofVoid };

/** As built over as drawn. */
export interface Deviations {
  /** On the conductivity of insulation, by element. */
  readonly insulation: Readonly<Record<string, number>>;
  /** On the transmittance of elements given outright, by element. */
  readonly transmittance: Readonly<Record<string, number>>;
  readonly bridges: number;
  readonly mass: number;
  /** On the mass of single elements and partitions besides, and on what does not insulate; 1 when left out. */
  readonly massOf?: Readonly<Record<string, number>>;
  readonly structure?: Readonly<Record<string, number>>;
  /** How much more than drawn a space beyond an element shelters it, by element: on 1 / factor - 1; 1 when left out. */
  readonly shelter?: Readonly<Record<string, number>>;
}

export const asDrawn: Deviations = { insulation: {}, transmittance: {}, bridges: 1, mass: 1 };

export const voidName = 'Roof void';
/** ISO 6946:2017 clause 6.10.2: a tiled roof with boards or felt; in the drawn ceiling as its last layer. */
export const roofSpace: Layer = { name: 'Roof space and tiles', resistanceM2KW: 0.2 };

/** Of an element towards an unheated space, unless the drawings state one. */
export const voidFactor = 0.9;

const insulating = 0.06; // conductivity below which a layer counts as insulation [W/(mK)]

/** Area of all parts of an element or partition [m²]. */
export const areaOf = (plan: Plan, name: string) =>
  plan.parts.filter((part) => part.of === name).reduce((sum, part) => sum + part.area, 0);

/** Transmittances of all elements as built, by name [W/(m²K)]. */
export function transmittances(plan: Plan, built: Deviations): Map<string, number> {
  const all = new Map<string, number>();
  for (const { name, uValue, buildUp, to = 'outside' } of plan.elements) {
    if (uValue !== undefined) all.set(name, uValue * (built.transmittance[name] ?? 1));
    if (buildUp === undefined) continue;
    const facing = buildUp.facing ?? 'across';
    const beyond = to === 'outside' ? outsideResistance : insideResistance[facing];
    all.set(name, transmittance(asBuilt(buildUp.layers, name, built), facing, beyond));
  }
  if (plan.groundFloor !== undefined) {
    const { name } = plan.groundFloor;
    all.set(name, floorTransmittance(plan.groundFloor, areaOf(plan, name), built).whole);
  }
  return all;
}

/** Of the ground floor and what lies under it [W/(m²K)]; and how much of that goes off with the outdoor air. */
export function floorTransmittance(floor: GroundFloor, area: number, built: Deviations) {
  const layers = asBuilt(floor.layers, floor.name, built);
  if (floor.suspended)
    return suspendedTransmittance(
      transmittance(layers, 'down', insideResistance.down),
      area,
      floor.perimeter,
    );
  const whole = slabTransmittance(layersResistance(evenLayers(layers, 'down')), area, floor.perimeter);
  return { whole, airShare: 0 };
}

/** The layers of the element or partition as they were built. */
export function asBuilt(layers: readonly Layer[], name: string, built: Deviations): Layer[] {
  return layers.map((layer) => ({
    ...layer,
    ...(layer.densityKgM3 !== undefined && {
      densityKgM3: layer.densityKgM3 * built.mass * (built.massOf?.[name] ?? 1),
    }),
    ...(layer.conductivityWmK !== undefined && {
      conductivityWmK:
        layer.conductivityWmK *
        ((layer.conductivityWmK < insulating ? built.insulation : built.structure)?.[name] ?? 1),
    }),
  }));
}
