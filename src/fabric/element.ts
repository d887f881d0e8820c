/** One element of the shell as drawn. */
import type { DesignElement, LimitKind, MassClass } from '../house.ts';
import type { BuildUp } from './buildUp.ts';
import { doubtsAbout, doubtsAboutLengths } from './doubts.ts';
import { type FabricFinding, within } from './finding.ts';
import { buildUpFrom, correctionsFrom } from './fromHouse.ts';
import type { SlabOnGround } from './ground.ts';
import { type PeriodicResponse, periodicResponse } from './heatCapacity.ts';
import { limitKindOf } from './limits.ts';
import { type Spread, spreadOfLayers, spreadOfStated } from './spread.ts';
import type { Beyond } from './surfaces.ts';
import type { SuspendedFloor } from './suspendedFloor.ts';
import { throughLayers } from './throughLayers.ts';
import type { TransmittanceResult } from './transmittance.ts';

export interface ElementDesign {
  readonly name: string;
  /** [m²] */
  readonly area: number;
  readonly to: Beyond;
  /** Has a solar transmittance: counts as a window, without mass. */
  readonly glazed: boolean;
  /** Which limiting transmittance to set beside its own: as stated, else proposed; null where neither is known. */
  readonly limitKind: LimitKind | null;
  /** As stated, for an element whose layers do not tell what it stores; null else. */
  readonly massClass: MassClass | null;
  /** [W/(m²K)]; null where its layers are refused and no transmittance stands beside them. */
  readonly transmittance: number | null;
  /** How sure that is; null with it. */
  readonly spread: Spread | null;
  /** Share of the inside to outside difference that lies over it [–]; 0 for an element to a neighbour. */
  readonly temperatureFactor: number;
  /** One standard deviation of that, where it was assumed [–]. */
  readonly temperatureFactorSd: number;
  /** To outside and ground [W/K]; 0 for any element to a neighbour, null for others without a transmittance. */
  readonly heatLoss: number | null;
  /** To a heated neighbour [W/K]: null without a transmittance, 0 for all others. */
  readonly toNeighbour: number | null;
  /** The build-up in SI; null when the element is known by its transmittance alone, as are the next three. */
  readonly buildUp: BuildUp | null;
  /** The layers' transmittance and all its workings, even where another one is stated beside them. */
  readonly transmission: TransmittanceResult | null;
  /** Over 24 hours. */
  readonly periodic: PeriodicResponse | null;
  /** The ground under a floor by its layers and perimeter; null for all others. */
  readonly ground: SlabOnGround | SuspendedFloor | null;
  readonly findings: readonly FabricFinding[];
}

/** Share of the inside to outside difference that lies over an element to an unheated space, unless stated. */
const voidFactor = 0.9;
/** Its standard deviation: from a tight, insulated space to one as open as outdoors. PRACTICE. */
const voidFactorSd = 0.1;

/**
 * An element's transmittance and heat loss: as stated, else by its layers.
 *
 * @param index its place among the elements, for the findings' keys
 * @see ISO 6946:2017, ISO 13370:2017, ISO 13789:2017
 */
export function elementDesign(entry: DesignElement, index: number): ElementDesign {
  const { name, areaM2: area, to = 'outside', buildUp } = entry;
  const known = buildUp === undefined ? byTransmittance(entry) : byLayers(entry, buildUp);
  const assumedFactor = to === 'void' && entry.temperatureFactor === undefined;
  const temperatureFactor =
    to === 'adjacent' ? 0 : (entry.temperatureFactor ?? (to === 'void' ? voidFactor : 1));
  const { transmittance } = known;
  const glazed = entry.gValue !== undefined;
  const factor: FabricFinding[] = assumedFactor
    ? [{ code: 'void-factor-assumed', factor: voidFactor, where: { key: 'temperatureFactor' } }]
    : [];
  return {
    name,
    area,
    to,
    glazed,
    massClass: entry.massClass ?? null,
    limitKind: entry.limitKind ?? limitKindOf({ to, glazed, buildUp: known.buildUp }),
    temperatureFactor,
    temperatureFactorSd: assumedFactor ? voidFactorSd : 0,
    heatLoss: to === 'adjacent' ? 0 : transmittance && transmittance * area * temperatureFactor,
    toNeighbour: to === 'adjacent' ? transmittance && transmittance * area : 0,
    ...known,
    findings: within(`elements[${index}]`, [...known.findings, ...factor]),
  };
}

type Known = Pick<
  ElementDesign,
  'transmittance' | 'spread' | 'buildUp' | 'transmission' | 'periodic' | 'ground' | 'findings'
>;

/** Above this a transmittance is no building element's [W/(m²K)]: a bare metal sheet has 5.9. */
const highestTransmittance = 7;

function byTransmittance({ name, uValue }: DesignElement): Known {
  if (uValue === undefined)
    throw new RangeError(`the element "${name}" has neither transmittance nor layers`);
  return {
    transmittance: uValue,
    spread: spreadOfStated(uValue),
    buildUp: null,
    transmission: null,
    periodic: null,
    ground: null,
    findings: doubtfulTransmittance(uValue),
  };
}

function byLayers(entry: DesignElement, layers: NonNullable<DesignElement['buildUp']>): Known {
  const { to, perimeterM, uValue } = entry;
  const onGround = to === 'ground' && perimeterM !== undefined;
  const buildUp = buildUpFrom(onGround ? { facing: 'down', ...layers } : layers);
  const through = throughLayers(entry, buildUp, correctionsFrom(entry));
  const periodic = periodicResponse(buildUp, through.surfaces);
  return {
    transmittance: uValue ?? through.transmittance,
    spread: uValue === undefined ? spreadOfLayers(entry, buildUp) : spreadOfStated(uValue),
    buildUp,
    transmission: through.transmission,
    periodic,
    ground: through.ground,
    findings: [
      ...within('buildUp', [...doubtsAbout(buildUp), ...periodic.findings]),
      ...doubtsAboutLengths(entry),
      ...through.findings,
      ...besideLayers(uValue, through.transmittance),
    ],
  };
}

function besideLayers(stated: number | undefined, byLayers: number | null): FabricFinding[] {
  if (stated === undefined) return [];
  const beside = { code: 'stated-beside-layers', stated, byLayers, where: { key: 'uValue' } } as const;
  return [beside, ...doubtfulTransmittance(stated)];
}

function doubtfulTransmittance(transmittance: number): FabricFinding[] {
  if (transmittance <= highestTransmittance) return [];
  const likely = transmittance / 100;
  return [{ code: 'transmittance-doubtful', transmittance, likely, where: { key: 'uValue' } }];
}
