/** The elements of a design as the network has them. */
import { groundConductivities, usualSoil } from '../../fabric/ground.ts';
import type { ElementDesign } from '../../fabric/index.ts';
import { surfacesOf } from '../../fabric/surfaces.ts';
import type { DesignElement } from '../../house.ts';
import type { Plane } from '../../sky/irradiance.ts';
import type { Facing } from './cells.ts';
import { type Lining, plausibleSlab } from './plausibleLayers.ts';
import { resistanceOf, type Slab, type SlabLayer, slabOf } from './slab.ts';

/** What lies on the far side of a slab. */
export type FarSide = 'outside' | 'ground' | 'adjacent' | 'void' | 'underfloor' | 'inside';

export interface NetworkElement {
  readonly name: string;
  /** [m²] */
  readonly area: number;
  readonly slab: Slab;
  readonly beyond: FarSide;
  /** Share of the inside to outside difference that lies over it [–]; for a neighbour 0. */
  readonly temperatureFactor: number;
  /** Solar energy transmittance of a window; 0 for all others [–]. */
  readonly solarTransmittance: number;
  readonly plane: Plane;
  readonly facing: Facing;
  /** Whether building it worse or better than drawn shows in its insulation: not in a window. */
  readonly fixed: boolean;
}

/** Of the panes that face the room [J/(m²K)]: 4 mm of glass at 2500 kg/m³ and 750 J/(kgK). */
const PANE = 7.5e3;
const PANE_RESISTANCE = 0.004; // [m²K/W]
const SOIL_DEPTH = 0.5; // [m], as in ISO 52016-1:2017
const SOIL_CAPACITY = 2.5e6; // [J/(m³K)]

/** One of an element whose layers are known; one of each lining where they are made up. */
export function elementsOf(
  entry: DesignElement,
  element: ElementDesign,
  transmittance: number,
  linings: readonly Lining[],
): NetworkElement[] {
  if (element.buildUp !== null || element.glazed)
    return [elementOf(entry, element, transmittance, linings[0].layer)];
  return linings.map(({ share, layer }) => {
    const whole = elementOf(entry, element, transmittance, layer);
    return { ...whole, area: whole.area * share };
  });
}

function elementOf(
  entry: DesignElement,
  element: ElementDesign,
  transmittance: number,
  lining: SlabLayer,
): NetworkElement {
  const { name, area, to, buildUp, temperatureFactor, glazed } = element;
  const suspended = entry.underfloor !== undefined;
  const facing = buildUp?.facing ?? (to === 'ground' ? 'down' : 'across');
  return {
    name,
    area,
    slab: glazed
      ? window(transmittance)
      : to === 'ground' && !suspended
        ? groundSlab(entry, element, transmittance, lining)
        : buildUp === null
          ? plausibleSlab(transmittance, lining)
          : slabOf(buildUp, surfacesOf(facing, suspended ? 'void' : to), transmittance),
    beyond: suspended ? 'underfloor' : to,
    temperatureFactor,
    solarTransmittance: entry.gValue ?? 0,
    plane: {
      tilt: radians(entry.tiltDeg ?? (facing === 'up' ? ROOF_TILT : 90)),
      azimuth: entry.orientationDeg === undefined ? null : radians(entry.orientationDeg),
    },
    facing: FACINGS[facing],
    fixed: glazed,
  };
}

export const FACINGS = { up: 'ceiling', across: 'wall', down: 'floor' } as const;
const radians = (degrees: number) => (degrees * Math.PI) / 180;
/** Of a roof that does not say [degrees]. */
const ROOF_TILT = 30;

/** Two faces that are both warm. */
export const innerElement = (
  name: string,
  area: number,
  layers: readonly SlabLayer[],
  facing: Facing,
): NetworkElement => ({
  name,
  area,
  slab: { layers, surfaces: { inside: 0.13, outside: 0.13 } },
  beyond: 'inside',
  temperatureFactor: 0,
  solarTransmittance: 0,
  plane: { tilt: Math.PI / 2, azimuth: null },
  facing,
  fixed: true,
});

/** A pane towards the room; the rest of the resistance outside of it. */
function window(transmittance: number): Slab {
  const surfaces = { inside: 0.13, outside: 0.04 };
  const between = Math.max(1e-3, 1 / transmittance - surfaces.inside - surfaces.outside - PANE_RESISTANCE);
  return {
    layers: [
      { resistance: PANE_RESISTANCE, arealHeatCapacity: PANE, insulating: false },
      { resistance: between, arealHeatCapacity: 0, insulating: false },
    ],
    surfaces,
  };
}

/**
 * A floor, half a metre of soil, and beneath it what is left of the whole resistance to the ground's own
 * temperature.
 *
 * @see ISO 13370:2017, annex F (virtual layer), ISO 52016-1:2017, 6.5.8
 */
function groundSlab(
  entry: DesignElement,
  { buildUp, transmission }: ElementDesign,
  transmittance: number,
  lining: SlabLayer,
): Slab {
  const surfaces = { inside: 0.17, outside: 0 };
  const whole = Math.max(0.1, 1 / transmittance - surfaces.inside);
  const stated = buildUp !== null && entry.uValue !== undefined && entry.perimeterM === undefined;
  const floor =
    buildUp === null
      ? plausibleFloor(lining, whole)
      : slabOf(
          buildUp,
          { inside: 0.17, outside: 0.04 },
          stated ? null : (transmission?.transmittance ?? null),
        ).layers;
  const beneath = whole - resistanceOf(floor);
  const conductivity = groundConductivities[entry.soil ?? usualSoil];
  const depth = Math.min(SOIL_DEPTH, Math.max(0, beneath * conductivity * 0.8));
  const soil = {
    resistance: depth / conductivity,
    arealHeatCapacity: SOIL_CAPACITY * depth,
    insulating: false,
  };
  const rest = {
    resistance: Math.max(0, beneath - soil.resistance),
    arealHeatCapacity: 0,
    insulating: false,
  };
  return { layers: [...floor, soil, rest], surfaces };
}

/** A lining, half of what is left as insulation, and the ground the rest. */
function plausibleFloor(lining: SlabLayer, whole: number): SlabLayer[] {
  const resistance = Math.min(lining.resistance, 0.9 * whole);
  const insulation = { resistance: (whole - resistance) / 2, arealHeatCapacity: 5e3, insulating: true };
  return [{ ...lining, resistance }, insulation];
}
