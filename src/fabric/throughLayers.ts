/** From layers to what passes between the room and what lies beyond them, ground included. */
import type { DesignElement } from '../house.ts';
import type { BuildUp } from './buildUp.ts';
import type { CorrectionsAsked } from './corrections.ts';
import { type FabricFinding, within } from './finding.ts';
import { edgeFrom, groundFrom, underfloorFrom } from './fromHouse.ts';
import { type SlabOnGround, slabOnGround } from './ground.ts';
import { type Surfaces, surfacesOf } from './surfaces.ts';
import { type SuspendedFloor, suspendedFloor } from './suspendedFloor.ts';
import { type TransmittanceResult, transmittanceOf } from './transmittance.ts';

export interface ThroughLayers {
  /** Ground included where it is known [W/(m²K)]; null where the method may not be used. */
  readonly transmittance: number | null;
  readonly surfaces: Surfaces;
  /** The layers alone, with every figure on the way. */
  readonly transmission: TransmittanceResult;
  /** Null for all but floors on the ground whose perimeter is known. */
  readonly ground: SlabOnGround | SuspendedFloor | null;
  /** Keys count from the element. */
  readonly findings: readonly FabricFinding[];
}

/**
 * An element by its layers.
 *
 * @param groundConductivity [W/(mK)] instead of what the element says
 * @see ISO 6946:2017, ISO 13370:2017
 */
export function throughLayers(
  entry: DesignElement,
  buildUp: BuildUp,
  corrections: CorrectionsAsked,
  groundConductivity?: number,
): ThroughLayers {
  const { to = 'outside', underfloor } = entry;
  const surfaces = surfacesOf(buildUp.facing, underfloor === undefined ? to : 'void');
  const transmission = transmittanceOf(buildUp, surfaces, corrections);
  const own = within('buildUp', transmission.findings);
  const bare = { surfaces, transmission, transmittance: transmission.transmittance, ground: null };
  if (to !== 'ground') return { ...bare, findings: own };
  const { findings, ground } = groundUnder(entry, transmission, surfaces, groundConductivity);
  const all = [...own, ...findings];
  return ground === null
    ? { ...bare, findings: all }
    : { ...bare, transmittance: ground.transmittance, ground, findings: all };
}

function groundUnder(
  entry: DesignElement,
  { transmittance }: TransmittanceResult,
  surfaces: Surfaces,
  groundConductivity?: number,
): Pick<ThroughLayers, 'ground' | 'findings'> {
  const { areaM2: area, perimeterM: perimeter, underfloor } = entry;
  const where = { key: 'perimeterM' };
  if (perimeter === undefined)
    return { ground: null, findings: [{ code: 'ground-without-perimeter', where }] };
  if (transmittance === null) return { ground: null, findings: [] };
  const { around, assumed } = groundFrom(entry);
  const known = { ...around, ...(groundConductivity === undefined ? {} : { groundConductivity }) };
  const findings: FabricFinding[] = assumed ? [{ code: 'ground-assumed', ...around, where }] : [];
  if (underfloor !== undefined) {
    const space = underfloorFrom(underfloor);
    const floor = { area, perimeter, floorTransmittance: transmittance, ...known, ...space };
    return { ground: suspendedFloor(floor), findings: [...findings, ...spaceFindings(underfloor)] };
  }
  const resistance = Math.max(0, 1 / transmittance - surfaces.inside - surfaces.outside);
  const slab = { area, perimeter, resistance, ...known, edge: edgeFrom(entry) };
  return { ground: slabOnGround(slab), findings };
}

function spaceFindings(underfloor: NonNullable<DesignElement['underfloor']>): FabricFinding[] {
  const wanted = ['heightMm', 'wallUValue', 'openingMm2PerM', 'windSpeedMS', 'shelter'] as const;
  const keys = wanted.filter((key) => underfloor[key] === undefined);
  if (keys.length === 0) return [];
  return [{ code: 'underfloor-assumed', keys, where: { key: 'underfloor' } }];
}
