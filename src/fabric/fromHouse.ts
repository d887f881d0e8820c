/**
 * The border: build-ups of `house.json`, in millimetres and kilojoules, to SI. Nothing else in this room
 * converts.
 */
import type { Bridge, DesignElement, House, Layer, Partition } from '../house.ts';
import type { BuildUp, BuildUpLayer, LayerBridge } from './buildUp.ts';
import type { CorrectionsAsked } from './corrections.ts';
import {
  type EdgeInsulation,
  type GroundAround,
  groundConductivities,
  usualSoil,
  usualWall,
} from './ground.ts';
import { type Underfloor, usualUnderfloor } from './suspendedFloor.ts';

const fromMm = (length: number) => length / 1e3;
const fromMm2 = (area: number) => area / 1e6;
const fromKJ = (energy: number) => energy * 1e3;

/** Heat is taken to flow across where the build-up does not say. */
export function buildUpFrom({ facing = 'across', layers }: Partition['buildUp']): BuildUp {
  return { facing, layers: layers.map(layerFrom) };
}

export function correctionsFrom({ airGapLevel = 0, fasteners }: DesignElement): CorrectionsAsked {
  if (fasteners === undefined) return { airGapLevel, fasteners: null };
  const { perM2, areaMm2, conductivityWmK, depthMm } = fasteners;
  const depth = depthMm === undefined ? {} : { depth: fromMm(depthMm) };
  const area = fromMm2(areaMm2);
  return { airGapLevel, fasteners: { count: perM2, area, conductivity: conductivityWmK, ...depth } };
}

/** Heat capacity that the house states outright [J/K]; null when it does not. */
export function statedHeatCapacity({ heatCapacity, floorAreaM2 }: House): number | null {
  if (heatCapacity?.kJPerM2K === undefined || floorAreaM2 === undefined) return null;
  return fromKJ(heatCapacity.kJPerM2K) * floorAreaM2;
}

/** The air beyond walls to a heated neighbour. */
export interface Neighbour {
  /** [°C] */
  readonly temperature: number;
  /** How far it may be off either way [K]. */
  readonly plusMinus: number;
}

/** How far a stated temperature of a neighbour may be off where nobody says [K]: rooms heated by habit. PRACTICE. */
export const usualPlusMinus = 4;

/** The neighbour as stated; null where the house does not say. */
export function statedNeighbour({ conditions }: House): Neighbour | null {
  if (conditions?.neighbour === undefined) return null;
  const { temperatureC, plusMinusK = usualPlusMinus } = conditions.neighbour;
  return { temperature: temperatureC, plusMinus: plusMinusK };
}

/** The floor on the ground: what stands beside its layers, and which of it had to be assumed. */
export function groundFrom(entry: DesignElement): { around: GroundAround; assumed: boolean } {
  const { soil, wallThicknessMm } = entry;
  return {
    around: {
      wallThickness: wallThicknessMm === undefined ? usualWall : fromMm(wallThicknessMm),
      groundConductivity: groundConductivities[soil ?? usualSoil],
    },
    assumed: soil === undefined || wallThicknessMm === undefined,
  };
}

export function edgeFrom({ edgeInsulation: edge }: DesignElement): EdgeInsulation | null {
  if (edge === undefined) return null;
  return {
    lies: edge.lies,
    reach: fromMm(edge.reachMm),
    thickness: fromMm(edge.thicknessMm),
    conductivity: edge.conductivityWmK,
  };
}

export function underfloorFrom(entry: NonNullable<DesignElement['underfloor']>): Underfloor {
  const { heightMm, openingMm2PerM, wallUValue, windSpeedMS, shelter, groundResistanceM2KW } = entry;
  return {
    height: heightMm === undefined ? usualUnderfloor.height : fromMm(heightMm),
    opening: openingMm2PerM === undefined ? usualUnderfloor.opening : fromMm2(openingMm2PerM),
    wallTransmittance: wallUValue ?? usualUnderfloor.wallTransmittance,
    windSpeed: windSpeedMS ?? usualUnderfloor.windSpeed,
    shelter: shelter ?? usualUnderfloor.shelter,
    groundResistance: groundResistanceM2KW ?? usualUnderfloor.groundResistance,
  };
}

function layerFrom(layer: Layer): BuildUpLayer {
  const { name, thicknessMm, conductivityWmK, resistanceM2KW, air } = layer;
  const bridge = layer.bridge === undefined ? null : bridgeFrom(layer.bridge);
  const thickness = thicknessMm === undefined ? null : fromMm(thicknessMm);
  const mass = { density: layer.densityKgM3 ?? null, specificHeat: layer.specificHeatJkgK ?? null };
  if (resistanceM2KW !== undefined)
    return { kind: 'stated', name, resistance: resistanceM2KW, thickness, ...mass, bridge };
  if (thickness === null) throw new RangeError(`the layer "${name}" has no thickness`);
  if (air !== undefined) {
    const opening = layer.openingMm2PerM === undefined ? null : fromMm2(layer.openingMm2PerM);
    const width = layer.widthMm === undefined ? {} : { width: fromMm(layer.widthMm) };
    const emissivity = layer.emissivity === undefined ? {} : { emissivity: layer.emissivity };
    return { kind: 'air', name, thickness, ventilation: air, opening, ...width, ...emissivity, bridge };
  }
  if (conductivityWmK === undefined) throw new RangeError(`the layer "${name}" states no resistance`);
  return { kind: 'solid', name, thickness, conductivity: conductivityWmK, ...mass, bridge };
}

/** Timbers by width and centres, with plates and noggins beside them, or the fraction outright. */
function bridgeFrom(bridge: Bridge): LayerBridge {
  const { widthMm = 0, spacingMm = Infinity, extraFraction = 0 } = bridge;
  return {
    name: bridge.name,
    fraction: bridge.fraction ?? widthMm / spacingMm + extraFraction,
    conductivity: bridge.conductivityWmK,
    density: bridge.densityKgM3 ?? null,
    specificHeat: bridge.specificHeatJkgK ?? null,
    ...(bridge.continues === undefined ? {} : { continues: bridge.continues }),
  };
}
