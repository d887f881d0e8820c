/** Transmittance of a build-up by the combined method, with every figure on the way. */
import { sum } from 'simple-statistics';
import {
  assumedOpening,
  cutAt,
  type Shell,
  thickestAirLayer,
  ventilatedShare,
  withinVentilated,
} from './airLayers.ts';
import type { BuildUp, BuildUpLayer } from './buildUp.ts';
import { type Limits, limitsOf } from './combinedMethod.ts';
import { type Corrections, type CorrectionsAsked, correctionsOf, noCorrections } from './corrections.ts';
import type { FabricFinding } from './finding.ts';
import { type Refusal, refusalsOf } from './refusals.ts';
import { framesOf, partsOf } from './sections.ts';
import type { Surfaces } from './surfaces.ts';

export interface TransmittanceCase extends Limits {
  /** How far this case counts in the whole [–]; 1 unless a layer is slightly ventilated. */
  readonly share: number;
}

/** What one layer does, in the order of the build-up. */
export interface LayerWorking {
  readonly name: string;
  /** Beside its bridge [m²K/W]; null where the bridge fills it. */
  readonly clear: number | null;
  /** Along its bridge [m²K/W], and the bridge's share of the face [–]. */
  readonly bridge: { readonly resistance: number; readonly fraction: number } | null;
  /** How far it counts [–]: 0 outside a well ventilated layer and for that layer itself, 1 else. */
  readonly counts: number;
}

/** Every figure between the layers and the transmittance. */
export interface Workings {
  /** All layers of the build-up, also those that do not count. */
  readonly layers: readonly LayerWorking[];
  /** At least one; the one that reaches furthest out comes first. */
  readonly cases: readonly TransmittanceCase[];
  /** Upper limit R′T of the resistance [m²K/W]. */
  readonly upper: number;
  /** Lower limit R″T of the resistance [m²K/W]. */
  readonly lower: number;
  /** RT, from air to air, before corrections [m²K/W]. */
  readonly resistance: number;
  /** The method's own largest error: half of what lies between the limits [m²K/W]. */
  readonly error: number;
  /** The same, relative to the resistance [–]. */
  readonly relativeError: number;
  readonly corrections: Corrections;
}

export interface TransmittanceResult extends Workings {
  /** Corrections included where they count [W/(m²K)]; null where the method may not be used. */
  readonly transmittance: number | null;
  /** Why there is no transmittance; empty when there is one. The limits are shown all the same. */
  readonly refusals: readonly Refusal[];
  /** The refusals among them. Keys count from the build-up: `layers[1]`. */
  readonly findings: readonly FabricFinding[];
}

/**
 * Transmittance of a build-up [W/(m²K)].
 *
 * Any layer may be bridged. Bridges of several layers cross each other, so the upper limit runs over every
 * combination of them, unless one says that it continues the one before. Slightly ventilated layers are
 * interpolated between closed and open. Metal through insulation and limits that lie too far apart are refused.
 *
 * @throws RangeError if a layer without thickness has a bridge
 * @see ISO 6946:2017, 6.7.2 (combined method), 6.9 (air layers), Annex D (small air spaces), Annex F
 * (corrections)
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
  const added = corrections.applied ? corrections.airGaps + corrections.fasteners : 0;
  const refusals = refusalsOf(shell.layers, upper / lower);
  return {
    transmittance: refusals.length > 0 ? null : 1 / resistance + added,
    refusals,
    layers: buildUp.layers.map((layer, i) => workingOf(layer, buildUp, countOf(i, cases))),
    cases,
    upper,
    lower,
    resistance,
    error: (upper - lower) / 2,
    relativeError: (upper - lower) / (2 * resistance),
    corrections,
    findings: [
      ...shell.layers.flatMap(layerFindings),
      ...crossingFindings(shell.layers),
      ...refusals,
      ...fastenerFindings(shell.layers, corrections, asked),
    ],
  };
}

/** The build-up closed at every slightly ventilated layer, and cut at each of them, with the share of each. */
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

const countOf = (layer: number, cases: readonly TransmittanceCase[]): number =>
  sum(cases.filter((it) => layer < it.layers.length).map((it) => it.share));

function workingOf(layer: BuildUpLayer, { facing }: BuildUp, counts: number): LayerWorking {
  const parts = partsOf(layer, facing);
  const bridge = parts.find((part) => part.bridge);
  return {
    name: layer.name,
    clear: parts.find((part) => !part.bridge)?.resistance ?? null,
    bridge: bridge === undefined ? null : { resistance: bridge.resistance, fraction: bridge.fraction },
    counts,
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

function crossingFindings(layers: readonly BuildUpLayer[]): FabricFinding[] {
  const count = framesOf(layers).length;
  return count > 1 ? [{ code: 'bridges-cross', count, where: { key: 'layers' } }] : [];
}

function fastenerFindings(
  layers: readonly BuildUpLayer[],
  { layer }: Corrections,
  { fasteners }: CorrectionsAsked,
): FabricFinding[] {
  if (fasteners === null || layer === null || layers[layer].thickness !== null) return [];
  return [{ code: 'fasteners-without-thickness', where: { key: `layers[${layer}]` } }];
}
