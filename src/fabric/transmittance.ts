/** Transmittance of a build-up by the combined method, with every figure on the way. */
import { sum } from 'simple-statistics';
import type { HeatFlow } from '../house.ts';
import {
  assumedOpening,
  cutAt,
  type Shell,
  thickestAirLayer,
  ventilatedShare,
  withinVentilated,
} from './airLayers.ts';
import type { BuildUp, BuildUpLayer } from './buildUp.ts';
import { type Corrections, type CorrectionsAsked, correctionsOf, noCorrections } from './corrections.ts';
import type { FabricFinding } from './finding.ts';
import { blend, partsOf, sectionsOf } from './sections.ts';
import type { Surfaces } from './surfaces.ts';

/** One way through a build-up, from air to air. */
export interface SectionResistance {
  /** Share of the face [–]. */
  readonly fraction: number;
  /** Both surfaces included [m²K/W]. */
  readonly resistance: number;
  /** The layers that it passes along their bridge, by position. */
  readonly bridged: readonly number[];
}

/** The limits for one state of the slightly ventilated layers, each of them taken as closed or as open. */
export interface TransmittanceCase {
  /** How far this case counts in the whole [–]; 1 unless a layer is slightly ventilated. */
  readonly share: number;
  /** [m²K/W] */
  readonly surfaces: Surfaces;
  /** Each layer that resists, bridge included, from inside to outside [m²K/W]. */
  readonly layers: readonly number[];
  readonly sections: readonly SectionResistance[];
  /** R′T [m²K/W] */
  readonly upper: number;
  /** R″T [m²K/W] */
  readonly lower: number;
}

export interface TransmittanceResult {
  /** Corrections included where they count [W/(m²K)]. */
  readonly transmittance: number;
  /** RT, from air to air, before corrections [m²K/W]. */
  readonly resistance: number;
  /** Upper limit R′T of the resistance [m²K/W]. */
  readonly upper: number;
  /** Lower limit R″T of the resistance [m²K/W]. */
  readonly lower: number;
  /** The method's own largest error, relative to the resistance [–]. */
  readonly relativeError: number;
  /** At least one; the one that reaches furthest out comes first. */
  readonly cases: readonly TransmittanceCase[];
  readonly corrections: Corrections;
  /** Keys count from the build-up: `layers[1]`. */
  readonly findings: readonly FabricFinding[];
}

/**
 * Largest ratio of upper to lower limit for which the standard stands by the method. ISO 6946:2017, 6.7.2.
 */
const largestRatio = 1.5;

/**
 * Transmittance of a build-up [W/(m²K)].
 *
 * Any layer may be bridged; bridges of several layers are taken to cross at random, so the upper limit runs
 * over every combination of them. Slightly ventilated layers are interpolated between closed and open.
 *
 * @throws RangeError if a layer without thickness has a bridge
 * @see ISO 6946:2017, 6.7.2 (combined method), 6.9 (air layers), Annex F (corrections)
 */
export function transmittanceOf(
  buildUp: BuildUp,
  surfaces: Surfaces,
  asked: CorrectionsAsked = noCorrections,
): TransmittanceResult {
  const shell = withinVentilated(buildUp, surfaces);
  const cases = shellsOf(shell).map(({ share, ...it }) => ({ share, ...limitsOf(it, buildUp.facing) }));
  const upper = sum(cases.map((it) => it.share * it.upper));
  const lower = sum(cases.map((it) => it.share * it.lower));
  const resistance = (upper + lower) / 2;
  const corrections = correctionsOf(shell.layers, cases[0].layers, resistance, asked);
  return {
    transmittance: 1 / resistance + (corrections.applied ? corrections.airGaps + corrections.fasteners : 0),
    resistance,
    upper,
    lower,
    relativeError: (upper - lower) / (2 * resistance),
    cases,
    corrections,
    findings: [
      ...shell.layers.flatMap(layerFindings),
      ...wholeFindings(shell.layers, upper / lower),
      ...fastenerFindings(shell.layers, corrections, asked),
    ],
  };
}

/**
 * The build-up closed at every slightly ventilated layer, and cut at each of them, with the share of each.
 */
function shellsOf({ layers, surfaces }: Shell): (Shell & { readonly share: number })[] {
  const cut: (Shell & { readonly share: number })[] = [];
  let left = 1;
  layers.forEach((layer, i) => {
    const share = ventilatedShare(layer);
    if (share > 0) cut.unshift({ ...cutAt(layers, i, surfaces), share: left * share });
    left *= 1 - share;
  });
  return [{ layers, surfaces, share: left }, ...cut];
}

/** Upper limit: whole sections side by side. Lower limit: each layer's parts side by side, then in a row. */
function limitsOf({ layers, surfaces }: Shell, facing: HeatFlow): Omit<TransmittanceCase, 'share'> {
  const parts = layers.map((layer) => partsOf(layer, facing));
  const both = surfaces.inside + surfaces.outside;
  const sections = sectionsOf(parts).map((section) => ({
    fraction: section.fraction,
    resistance: both + sum(section.parts.map((part) => part.resistance)),
    bridged: section.parts.flatMap((part, i) => (part.bridge ? [i] : [])),
  }));
  const blended = parts.map((it) => blend(it).resistance);
  return {
    surfaces,
    layers: blended,
    sections,
    upper: 1 / sum(sections.map((section) => section.fraction / section.resistance)),
    lower: both + sum(blended),
  };
}

function layerFindings(layer: BuildUpLayer, i: number): FabricFinding[] {
  if (layer.kind !== 'air') return [];
  const where = { key: `layers[${i}]` };
  const findings: FabricFinding[] = [];
  if (layer.ventilation === 'slightly' && layer.opening === null)
    findings.push({ code: 'openings-assumed', opening: assumedOpening, where });
  if (layer.thickness > thickestAirLayer)
    findings.push({ code: 'air-layer-thick', thickness: layer.thickness, taken: thickestAirLayer, where });
  return findings;
}

function wholeFindings(layers: readonly BuildUpLayer[], ratio: number): FabricFinding[] {
  const where = { key: 'layers' };
  const findings: FabricFinding[] = [];
  const count = layers.filter((layer) => layer.bridge !== null).length;
  if (count > 1) findings.push({ code: 'bridges-cross', count, where });
  if (ratio > largestRatio)
    findings.push({ code: 'combined-method-out-of-range', ratio, limit: largestRatio, where });
  return findings;
}

function fastenerFindings(
  layers: readonly BuildUpLayer[],
  { layer }: Corrections,
  { fasteners }: CorrectionsAsked,
): FabricFinding[] {
  if (fasteners === null || layer === null || layers[layer].thickness !== null) return [];
  return [{ code: 'fasteners-without-thickness', where: { key: `layers[${layer}]` } }];
}
