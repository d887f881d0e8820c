/** The whole house as drawn: heat loss, heat capacity, time constant. */
import { sum } from 'simple-statistics';
import type { House } from '../house.ts';
import { doubtsAboutAreas } from './areas.ts';
import { bridgesOf } from './bridges.ts';
import { type ElementDesign, elementDesign } from './element.ts';
import type { FabricFinding } from './finding.ts';
import { houseCapacity } from './houseCapacity.ts';
import { neighbourFindings } from './neighbour.ts';
import { type DesignRanges, rangesOf } from './ranges.ts';
import { ventilationOf } from './ventilation.ts';

export interface Design {
  /** To outside and ground: fabric, bridges and ventilation as drawn [W/K]; null when an element is refused. */
  readonly heatLoss: number | null;
  /** The same with vents shut and fans off [W/K]; null unless the house states its air changes then. */
  readonly heatLossAsTested: number | null;
  /** The elements' part [W/K]; null when one of them is refused. */
  readonly fabric: number | null;
  /** The thermal bridges' part [W/K]. */
  readonly bridges: number;
  /** Of that, each junction's part where they are told apart [W/K]. */
  readonly junctions: readonly number[];
  /** The air's part as drawn [W/K]. */
  readonly ventilation: number;
  /** To heated neighbours, which is in none of the above [W/K]; null when such an element is refused. */
  readonly toNeighbours: number | null;
  /** Of the elements to outside, ground and unheated spaces [m²]. */
  readonly exposedArea: number;
  /** Fabric and bridges over the exposed area [W/(m²K)]; 0 when nothing is exposed. */
  readonly meanTransmittance: number | null;
  /** How sure the design itself is: 95 % of each figure. */
  readonly ranges: DesignRanges;
  /** 24-hour periodic, with partitions, furniture and air [J/K]; null when unknown. */
  readonly heatCapacity: number | null;
  /** One standard deviation of the heat capacity, relative [–]; null when unknown. */
  readonly heatCapacitySd: number | null;
  /** Heat capacity over heat loss as drawn [s]; null without either. */
  readonly timeConstant: number | null;
  /** In the order of the house. */
  readonly elements: readonly ElementDesign[];
  /** Why there is no heat loss; empty when there is one. */
  readonly refusals: readonly FabricFinding[];
  /** Those of the house as a whole; each element has its own. */
  readonly findings: readonly FabricFinding[];
}

/**
 * The design of a house; null without elements.
 *
 * Elements to a heated neighbour lose nothing here, those to an unheated space 0.9 of what they would to
 * outside unless the house states another temperature factor. An element whose layers the standard refuses
 * and that states no transmittance leaves the house without a heat loss, unless it is one to a neighbour: no
 * figure is better than one that lacks a wall.
 *
 * @throws RangeError on a house that the schema would have refused
 * @see ISO 13789:2017
 */
export function designOf(house: House): Design | null {
  if (house.elements === undefined) return null;
  const elements = house.elements.map(elementDesign);
  const exposedArea = sum(elements.filter((it) => it.to !== 'adjacent').map((it) => it.area));
  const fabric = allOf(elements.map((it) => it.heatLoss));
  const bridges = bridgesOf(house, exposedArea);
  const ventilation = ventilationOf(house, exposedArea);
  const shell = fabric === null ? null : fabric + bridges.heatLoss;
  const heatLoss = shell === null ? null : shell + ventilation.asDrawn.value;
  const { heatCapacity, heatCapacitySd, findings } = houseCapacity(house, elements);
  return {
    heatLoss,
    heatLossAsTested:
      shell === null || ventilation.asTested === null ? null : shell + ventilation.asTested.value,
    fabric,
    bridges: bridges.heatLoss,
    junctions: bridges.junctions,
    ventilation: ventilation.asDrawn.value,
    toNeighbours: allOf(elements.map((it) => it.toNeighbour)),
    exposedArea,
    meanTransmittance: shell === null ? null : exposedArea > 0 ? shell / exposedArea : 0,
    ranges: rangesOf(elements, bridges, ventilation),
    heatCapacity,
    heatCapacitySd,
    timeConstant: timeConstantOf(heatCapacity, heatLoss),
    elements,
    refusals: refusalsOf(elements),
    findings: [
      ...bridges.findings,
      ...ventilation.findings,
      ...neighbourFindings(house, elements),
      ...doubtsAboutAreas(house, elements),
      ...findings,
    ],
  };
}

/** Heat capacity over heat loss [s]; null without either. ISO 13790:2008, 12.2.1.3. */
export const timeConstantOf = (heatCapacity: number | null, heatLoss: number | null): number | null =>
  heatCapacity === null || heatLoss === null || heatLoss <= 0 ? null : heatCapacity / heatLoss;

/** The sum, or null where one of them is. */
function allOf(parts: readonly (number | null)[]): number | null {
  const known = parts.filter((it) => it !== null);
  return known.length < parts.length ? null : sum(known);
}

function refusalsOf(elements: readonly ElementDesign[]): FabricFinding[] {
  const refused = elements.filter((it) => it.heatLoss === null);
  if (refused.length === 0) return [];
  const reasons = refused.flatMap((it) => it.findings.filter(({ code }) => refusing.includes(code)));
  const names = refused.map((it) => it.name);
  return [{ code: 'no-transmittance', elements: names, where: { key: 'elements' } }, ...reasons];
}

const refusing: readonly FabricFinding['code'][] = [
  'combined-method-out-of-range',
  'metal-bridges-insulation',
];
