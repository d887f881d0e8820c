/** A house as drawn, and how its building strays from the drawings. */
import type { DesignElement, Layer, Partition } from '../../src/house.ts';
import type { Exchange, Vents } from './model.ts';
import { evenLayers, layersResistance, slabTransmittance, transmittance } from './transmittance.ts';

export interface Room {
  readonly name: string;
  /** [m²] and [m³] */
  readonly floorArea: number;
  readonly volume: number;
  readonly inletShare: number;
  /** The share of its air that goes on up: to the room named, or into the roof void. */
  readonly upTo: string;
  readonly upShare: number;
}

/** Where a part of an element or partition lies. */
export interface PlacedPart {
  /** Of the element or partition. */
  readonly of: string;
  /** [m²] */
  readonly area: number;
  readonly room: string;
  /** From north, clockwise [degrees]; of a face to the outside. */
  readonly bearing?: number;
  /** The room on the other side of a partition. */
  readonly beyond?: string;
}

export interface Plan {
  readonly rooms: readonly Room[];
  /** With a `uValue` or a build-up; the areas come from the parts. The ground floor stands below. */
  readonly elements: readonly Omit<DesignElement, 'areaM2'>[];
  readonly groundFloor: {
    readonly name: string;
    readonly layers: readonly Layer[];
    readonly perimeter: number;
  };
  readonly partitions: readonly Omit<Partition, 'areaM2'>[];
  readonly parts: readonly PlacedPart[];
  /** One roof void over the element named, with two slopes. */
  readonly roofVoid: {
    readonly over: string;
    readonly volume: number;
    readonly vents: Vents;
    readonly slopes: readonly { readonly bearing: number; readonly tilt: number; readonly area: number }[];
    readonly layers: readonly Layer[];
  };
  /** [W/K] */
  readonly bridges: number;
  readonly exchanges: readonly (Omit<Exchange, 'lower' | 'upper'> & {
    readonly lower: string;
    readonly upper: string;
  })[];
}

/** As built over as drawn. */
export interface Deviations {
  /** On the conductivity of insulation, by element. */
  readonly insulation: Readonly<Record<string, number>>;
  /** On the transmittance of elements given outright, by element. */
  readonly transmittance: Readonly<Record<string, number>>;
  readonly bridges: number;
  readonly mass: number;
}

export const asDrawn: Deviations = { insulation: {}, transmittance: {}, bridges: 1, mass: 1 };

export const voidName = 'Roof void';
/** ISO 6946:2017 clause 6.10.2: a tiled roof with boards or felt; in the drawn ceiling as its last layer. */
export const roofSpace: Layer = { name: 'Roof space and tiles', resistanceM2KW: 0.2 };

const insulating = 0.06; // conductivity below which a layer counts as insulation [W/(mK)]

/** Area of all parts of an element or partition [m²]. */
export const areaOf = (plan: Plan, name: string) =>
  plan.parts.filter((part) => part.of === name).reduce((sum, part) => sum + part.area, 0);

/** Transmittances of all elements as built, by name [W/(m²K)]. */
export function transmittances(plan: Plan, built: Deviations): Map<string, number> {
  const all = new Map<string, number>();
  for (const { name, uValue, buildUp } of plan.elements) {
    if (uValue !== undefined) all.set(name, uValue * (built.transmittance[name] ?? 1));
    if (buildUp !== undefined)
      all.set(name, transmittance(asBuilt(buildUp.layers, name, built), buildUp.facing ?? 'across'));
  }
  const { name, perimeter } = plan.groundFloor;
  all.set(name, slabTransmittance(layersResistance(floorLayers(plan, built)), areaOf(plan, name), perimeter));
  return all;
}

/** Of the ground floor, without what lies under it. */
export const floorLayers = ({ groundFloor }: Plan, built: Deviations) =>
  evenLayers(asBuilt(groundFloor.layers, groundFloor.name, built), 'down');

/** The layers of the element or partition as they were built. */
export function asBuilt(layers: readonly Layer[], name: string, built: Deviations): Layer[] {
  return layers.map((layer) => ({
    ...layer,
    ...(layer.densityKgM3 !== undefined && { densityKgM3: layer.densityKgM3 * built.mass }),
    ...(layer.conductivityWmK !== undefined &&
      layer.conductivityWmK < insulating && {
        conductivityWmK: layer.conductivityWmK * (built.insulation[name] ?? 1),
      }),
  }));
}
