/** The whole house as drawn: heat loss, heat capacity, time constant. */
import { sum } from 'simple-statistics';
import type { House } from '../house.ts';
import { type ElementDesign, elementDesign } from './element.ts';
import type { FabricFinding } from './finding.ts';
import { houseCapacity } from './houseCapacity.ts';
import { ventilationOf } from './ventilation.ts';

export interface Design {
  /** To outside and ground: fabric, bridges and ventilation as drawn [W/K]. */
  readonly heatLoss: number;
  /** The same with vents shut and fans off [W/K]; null unless the house states its air changes then. */
  readonly heatLossAsTested: number | null;
  /** The elements' part [W/K]. */
  readonly fabric: number;
  /** The thermal bridges' part [W/K]. */
  readonly bridges: number;
  /** The air's part as drawn [W/K]. */
  readonly ventilation: number;
  /** Of the elements to outside, ground and unheated spaces [m²]. */
  readonly exposedArea: number;
  /** Fabric and bridges over the exposed area [W/(m²K)]; 0 when nothing is exposed. */
  readonly meanTransmittance: number;
  /** 24-hour periodic, with partitions, furniture and air [J/K]; null when unknown. */
  readonly heatCapacity: number | null;
  /** One standard deviation of the heat capacity, relative [–]; null when unknown. */
  readonly heatCapacitySd: number | null;
  /** Heat capacity over heat loss as drawn [s]; null without either. */
  readonly timeConstant: number | null;
  /** In the order of the house. */
  readonly elements: readonly ElementDesign[];
  /** Those of the house as a whole; each element has its own. */
  readonly findings: readonly FabricFinding[];
}

/**
 * The design of a house; null without elements.
 *
 * Elements to a heated neighbour lose nothing here, those to an unheated space 0.9 of what they would to
 * outside unless the house states another temperature factor.
 *
 * @throws RangeError on a house that the schema would have refused
 * @see ISO 13789:2017
 */
export function designOf(house: House): Design | null {
  if (house.elements === undefined) return null;
  const elements = house.elements.map(elementDesign);
  const exposedArea = sum(elements.filter((it) => it.to !== 'adjacent').map((it) => it.area));
  const fabric = sum(elements.map((it) => it.heatLoss));
  const bridges = bridgesOf(house, exposedArea);
  const ventilation = ventilationOf(house, exposedArea);
  const heatLoss = fabric + bridges + ventilation.asDrawn;
  const { heatCapacity, heatCapacitySd, findings } = houseCapacity(house, elements);
  return {
    heatLoss,
    heatLossAsTested: ventilation.asTested === null ? null : fabric + bridges + ventilation.asTested,
    fabric,
    bridges,
    ventilation: ventilation.asDrawn,
    exposedArea,
    meanTransmittance: exposedArea > 0 ? (fabric + bridges) / exposedArea : 0,
    heatCapacity,
    heatCapacitySd,
    timeConstant: heatCapacity === null || heatLoss <= 0 ? null : heatCapacity / heatLoss,
    elements,
    findings: [...bridgeFindings(house), ...ventilation.findings, ...findings],
  };
}

/** [W/K] */
function bridgesOf({ thermalBridges }: House, exposedArea: number): number {
  return thermalBridges?.psiLengthWK ?? (thermalBridges?.yValue ?? 0) * exposedArea;
}

function bridgeFindings({ thermalBridges }: House): FabricFinding[] {
  return thermalBridges === undefined
    ? [{ code: 'bridges-not-stated', where: { key: 'thermalBridges' } }]
    : [];
}
