/** The design as a network of conduction: slabs between the rooms and what lies beyond them. */

import { buildUpFrom } from '../../fabric/fromHouse.ts';
import { groundConductivities, usualSoil } from '../../fabric/ground.ts';
import { classHeatCapacities, type Design, type ElementDesign } from '../../fabric/index.ts';
import { surfacesOf } from '../../fabric/surfaces.ts';
import type { DesignElement, House } from '../../house.ts';
import type { Plane } from '../../sky/irradiance.ts';
import type { Facing } from './cells.ts';
import { type Lining, liningsOf, plausibleSlab } from './plausibleLayers.ts';
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

export interface NetworkModel {
  readonly elements: readonly NetworkElement[];
  /** Loose things and what fills the shelves: [J/K] and face [m²]. */
  readonly furnitureCapacity: number;
  readonly furnitureArea: number;
  /** [J/K] */
  readonly airCapacity: number;
  /** Thermal bridges straight to outside [W/K]. */
  readonly bridges: number;
  /** With the air, as tested where that is stated [W/K]. */
  readonly ventilation: number;
  /** How the layers are known, and with it how sure the heat capacity is: one standard deviation of its logarithm. */
  readonly layering: 'as drawn' | 'made up';
  readonly capacitySd: number;
}

/** Of what is not there [m²]: nothing to the balance, and no division by zero. */
const NO_AREA = 1e-9;
const AIR = 1.2 * 1005; // [J/(m³K)]
/** Furniture per floor area [J/(m²K)]: 10 kJ of ISO 52016-1:2017 with the air, which stands apart here. */
const FURNITURE = 8e3;
/** Of the panes that face the room [J/(m²K)]: 4 mm of glass at 2500 kg/m³ and 750 J/(kgK). */
const PANE = 7.5e3;
/** 24-hour capacity of the lining of an element without layers beside others that have them [J/(m²K)]. PRACTICE. */
const UNKNOWN_LINING = 20e3;
const SOIL_DEPTH = 0.5; // [m], as in ISO 52016-1:2017
const SOIL_CAPACITY = 2.5e6; // [J/(m³K)]
/** Faces of inner walls and floors per floor area, where none are listed [–]. PRACTICE. */
const INNER_FACES = 2.5;
const STOREY = 2.5; // [m]
/** Air changes per hour where the design states none. PRACTICE: an ordinary shell with its vents shut. */
const USUAL_AIR_CHANGES = 0.3;
const CAPACITY_SD_LAYERS = 0.15;
const CAPACITY_SD_MADE_UP = 0.25;
/** Of a design whose mass nobody stated. */
const CAPACITY_SD_UNKNOWN = 0.35;

/**
 * The network of a house as drawn; null where an element has no transmittance.
 *
 * @param missing elements that are not there: they keep their place, so that all stages of a house have the same cells
 */
export function modelOf(house: House, design: Design, missing: readonly string[] = []): NetworkModel | null {
  const entries = house.elements ?? [];
  const floorArea = house.floorAreaM2 ?? (house.volumeM3 ?? 0) / STOREY;
  const volume = house.volumeM3 ?? floorArea * STOREY;
  const layered = design.elements.some(({ buildUp }) => buildUp !== null) && house.heatCapacity === undefined;
  const innerFaces = layered ? 0 : INNER_FACES * floorArea;
  const linings = liningsOf(layered ? UNKNOWN_LINING : liningCapacity(design, floorArea, innerFaces));
  const elements: NetworkElement[] = [];
  for (const [i, element] of design.elements.entries()) {
    const { transmittance } = element;
    if (transmittance === null) return null;
    const there = missing.includes(element.name) ? { ...element, area: NO_AREA } : element;
    elements.push(...elementsOf(entries[i], there, transmittance, linings));
  }
  if (innerFaces > 0)
    for (const { share, layer } of linings)
      elements.push(innerElement('Inner walls and floors', (share * innerFaces) / 2, [layer, layer], 'wall'));
  for (const { name, areaM2, buildUp } of layered ? (house.partitions ?? []) : [])
    if (buildUp.layers.length > 0) {
      const { layers } = slabOf(
        buildUpFrom(buildUp),
        surfacesOf(buildUp.facing ?? 'across', 'adjacent'),
        null,
      );
      elements.push(innerElement(name, areaM2, layers, FACINGS[buildUp.facing ?? 'across']));
    }
  const ventilation =
    design.heatLossAsTested !== null && design.heatLoss !== null
      ? design.ventilation + design.heatLossAsTested - design.heatLoss
      : design.ventilation;
  return {
    elements,
    furnitureCapacity: FURNITURE * floorArea,
    furnitureArea: Math.max(1, floorArea),
    airCapacity: AIR * volume,
    bridges: design.bridges,
    ventilation: ventilation > 0 ? ventilation : 0.33 * volume * USUAL_AIR_CHANGES,
    layering: layered ? 'as drawn' : 'made up',
    capacitySd: layered
      ? CAPACITY_SD_LAYERS
      : house.heatCapacity === undefined
        ? CAPACITY_SD_UNKNOWN
        : CAPACITY_SD_MADE_UP,
  };
}

/** One of an element whose layers are known; one of each lining where they are made up. */
function elementsOf(
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

const FACINGS = { up: 'ceiling', across: 'wall', down: 'floor' } as const;
const radians = (degrees: number) => (degrees * Math.PI) / 180;
/** Of a roof that does not say [degrees]. */
const ROOF_TILT = 30;

/** Two faces that are both warm. */
const innerElement = (
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
  const between = Math.max(0.01, 1 / transmittance - surfaces.inside - surfaces.outside);
  return {
    layers: [
      { resistance: 0.004, arealHeatCapacity: PANE, insulating: false },
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
      ? [lining, { resistance: whole / 2, arealHeatCapacity: 5e3, insulating: true }]
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

/** What each face must hold so that the whole house holds what is stated, or what its class does [J/(m²K)]. */
function liningCapacity(design: Design, floorArea: number, innerFaces: number): number {
  const whole = design.heatCapacity ?? classHeatCapacities.medium * floorArea;
  const opaque = design.elements.filter(({ glazed }) => !glazed).reduce((sum, { area }) => sum + area, 0);
  return Math.max(3e3, (whole - (FURNITURE + 2e3) * floorArea) / (opaque + innerFaces));
}
