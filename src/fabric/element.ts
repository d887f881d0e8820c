/** One element of the shell as drawn. */
import type { DesignElement } from '../house.ts';
import type { BuildUp } from './buildUp.ts';
import { type FabricFinding, within } from './finding.ts';
import { buildUpFrom, correctionsFrom } from './fromHouse.ts';
import { assumedGround, type SlabOnGround, slabOnGround } from './ground.ts';
import { type PeriodicResponse, periodicResponse } from './heatCapacity.ts';
import { type Beyond, surfacesOf } from './surfaces.ts';
import { type TransmittanceResult, transmittanceOf } from './transmittance.ts';

export interface ElementDesign {
  readonly name: string;
  /** [m²] */
  readonly area: number;
  readonly to: Beyond;
  /** Has a solar transmittance: counts as a window, without mass. */
  readonly glazed: boolean;
  /** [W/(m²K)] */
  readonly transmittance: number;
  /** To outside and ground [W/K]; 0 for an element to a neighbour. */
  readonly heatLoss: number;
  /** The build-up in SI; null when the element is known by its transmittance alone, as are the next three. */
  readonly buildUp: BuildUp | null;
  readonly transmission: TransmittanceResult | null;
  /** Over 24 hours. */
  readonly periodic: PeriodicResponse | null;
  /** The ground under a floor by its layers and perimeter; null for all others. */
  readonly ground: SlabOnGround | null;
  readonly findings: readonly FabricFinding[];
}

/**
 * Share of the inside to outside difference that lies over an element to an unheated space, unless stated.
 */
const voidFactor = 0.9;

/**
 * An element's transmittance and heat loss, by its transmittance or its layers.
 *
 * @param index its place among the elements, for the findings' keys
 * @see ISO 6946:2017, ISO 13370:2017, ISO 13789:2017
 */
export function elementDesign(entry: DesignElement, index: number): ElementDesign {
  const { name, areaM2: area, to = 'outside', temperatureFactor = to === 'void' ? voidFactor : 1 } = entry;
  const known = entry.buildUp === undefined ? byTransmittance(entry) : byLayers(entry, entry.buildUp, to);
  return {
    name,
    area,
    to,
    glazed: entry.gValue !== undefined,
    heatLoss: to === 'adjacent' ? 0 : known.transmittance * area * temperatureFactor,
    ...known,
    findings: within(`elements[${index}]`, known.findings),
  };
}

type Known = Pick<
  ElementDesign,
  'transmittance' | 'buildUp' | 'transmission' | 'periodic' | 'ground' | 'findings'
>;

function byTransmittance({ name, uValue }: DesignElement): Known {
  if (uValue === undefined)
    throw new RangeError(`the element "${name}" has neither transmittance nor layers`);
  return {
    transmittance: uValue,
    buildUp: null,
    transmission: null,
    periodic: null,
    ground: null,
    findings: [],
  };
}

function byLayers(entry: DesignElement, layers: NonNullable<DesignElement['buildUp']>, to: Beyond): Known {
  const onGround = to === 'ground' && entry.perimeterM !== undefined;
  const buildUp = buildUpFrom(onGround ? { facing: 'down', ...layers } : layers);
  const surfaces = surfacesOf(buildUp.facing, to);
  const transmission = transmittanceOf(buildUp, surfaces, correctionsFrom(entry));
  const periodic = periodicResponse(buildUp, surfaces);
  const floor = to === 'ground' ? floorOf(entry, transmission) : { ground: null, findings: [] };
  return {
    transmittance: floor.ground?.transmittance ?? transmission.transmittance,
    buildUp,
    transmission,
    periodic,
    ground: floor.ground,
    findings: [...within('buildUp', [...transmission.findings, ...periodic.findings]), ...floor.findings],
  };
}

function floorOf(
  { areaM2: area, perimeterM: perimeter }: DesignElement,
  { transmittance, cases }: TransmittanceResult,
): Pick<Known, 'ground' | 'findings'> {
  const where = { key: 'perimeterM' };
  if (perimeter === undefined)
    return { ground: null, findings: [{ code: 'ground-without-perimeter', where }] };
  const { inside, outside } = cases[0].surfaces;
  const resistance = Math.max(0, 1 / transmittance - inside - outside);
  return {
    ground: slabOnGround({ area, perimeter, resistance, ...assumedGround }),
    findings: [{ code: 'ground-assumed', ...assumedGround, where }],
  };
}
