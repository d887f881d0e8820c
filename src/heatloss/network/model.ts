/** The design as a network of conduction: slabs between the rooms and what lies beyond them. */

import { buildUpFrom } from '../../fabric/fromHouse.ts';
import { classHeatCapacities, type Design, ventilationLoss } from '../../fabric/index.ts';
import { surfacesOf } from '../../fabric/surfaces.ts';
import type { House } from '../../house.ts';
import { STOREY, USUAL_AIR_CHANGES } from '../airFlow.ts';
import { elementsOf, FACINGS, innerElement, type NetworkElement } from './elements.ts';
import { liningsOf } from './plausibleLayers.ts';
import { slabOf } from './slab.ts';

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
/** 24-hour capacity of the lining of an element without layers beside others that have them [J/(m²K)]. PRACTICE. */
const UNKNOWN_LINING = 20e3;
/** Faces of inner walls and floors per floor area, where none are listed [–]. PRACTICE. */
const INNER_FACES = 2.5;
const CAPACITY_SD_LAYERS = 0.15;
const CAPACITY_SD_MADE_UP = 0.25;
/** Of a design whose mass nobody stated. */
const CAPACITY_SD_UNKNOWN = 0.35;

/**
 * The network of a house as drawn; null where an element has no transmittance, or neither volume nor floor area is known.
 *
 * @param missing elements that are not there: they keep their place, so that all stages of a house have the same cells
 */
export function modelOf(house: House, design: Design, missing: readonly string[] = []): NetworkModel | null {
  const entries = house.elements ?? [];
  const floorArea = house.floorAreaM2 ?? (house.volumeM3 ?? 0) / STOREY;
  const volume = house.volumeM3 ?? floorArea * STOREY;
  if (!(volume > 0)) return null;
  const layered = design.elements.some(({ buildUp }) => buildUp !== null) && house.heatCapacity === undefined;
  const innerFaces = layered ? 0 : INNER_FACES * floorArea;
  const linings = liningsOf(layered ? UNKNOWN_LINING : liningCapacity(design, floorArea, innerFaces));
  const elements: NetworkElement[] = [];
  for (const [i, element] of design.elements.entries()) {
    const { transmittance } = element;
    if (transmittance === null) return null;
    const area = missing.includes(element.name) ? NO_AREA : element.area;
    // A stated capacity stands for the layers' own, so that nothing is counted twice.
    const buildUp = layered ? element.buildUp : null;
    elements.push(...elementsOf(entries[i], { ...element, area, buildUp }, transmittance, linings));
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
    house.conditions?.ventsClosed !== false && design.heatLossAsTested !== null && design.heatLoss !== null
      ? design.ventilation + design.heatLossAsTested - design.heatLoss
      : design.ventilation;
  return {
    elements,
    furnitureCapacity: FURNITURE * floorArea,
    furnitureArea: Math.max(1, floorArea),
    airCapacity: AIR * volume,
    bridges: design.bridges,
    ventilation: ventilation > 0 ? ventilation : ventilationLoss(USUAL_AIR_CHANGES, volume),
    layering: layered ? 'as drawn' : 'made up',
    capacitySd: layered
      ? Math.max(CAPACITY_SD_LAYERS, design.heatCapacitySd ?? 0)
      : house.heatCapacity === undefined
        ? CAPACITY_SD_UNKNOWN
        : CAPACITY_SD_MADE_UP,
  };
}

/** What each face must hold so that the whole house holds what is stated, or what its class does [J/(m²K)]. */
function liningCapacity(design: Design, floorArea: number, innerFaces: number): number {
  const whole = design.heatCapacity ?? classHeatCapacities.medium * floorArea;
  const opaque = design.elements.filter(({ glazed }) => !glazed).reduce((sum, { area }) => sum + area, 0);
  return Math.max(3e3, (whole - (FURNITURE + 2e3) * floorArea) / (opaque + innerFaces));
}
