/** What open joints and fasteners add to a transmittance. */
import type { BuildUpLayer } from './buildUp.ts';

export interface CorrectionsAsked {
  /** 0 none, 1 gaps through the insulation, 2 gaps through which air circulates. */
  readonly airGapLevel: 0 | 1 | 2;
  readonly fasteners: Fasteners | null;
}

export interface Fasteners {
  /** [1/m²] */
  readonly count: number;
  /** Cross-section of one [m²]. */
  readonly area: number;
  /** [W/(mK)] */
  readonly conductivity: number;
  /** Of a recessed one, within the insulation [m]; right through it where left out. */
  readonly depth?: number;
}

export interface Corrections {
  /** The layer that has the gaps and the fasteners: the one that resists most. Null when there is none. */
  readonly layer: number | null;
  /** [W/(m²K)] */
  readonly airGaps: number;
  /** [W/(m²K)] */
  readonly fasteners: number;
  /** (R1/RT)²: that layer's share of the whole resistance, squared [–]. */
  readonly weight: number;
  /** Whether they are in the transmittance: under 3 % of it in all they are dropped. */
  readonly applied: boolean;
}

export const noCorrections: CorrectionsAsked = { airGapLevel: 0, fasteners: null };

/** ΔU″ [W/(m²K)] by level. ISO 6946:2017, Annex F; MEMORY. */
const airGapTransmittance = [0, 0.01, 0.04] as const;
/** α of a fastener that goes right through the insulation [–]. ISO 6946:2017, Annex F; MEMORY. */
const throughAndThrough = 0.8;
/** Below this conductivity [W/(mK)] a fastener needs no correction. ISO 6946:2017, Annex F; MEMORY. */
const leastConductivity = 1;
/** Corrections below this share of the transmittance are dropped. ISO 6946:2017, 6.5; READ second-hand. */
const negligible = 0.03;

/**
 * Corrections to a transmittance [W/(m²K)].
 *
 * @param layers      the build-up's layers that resist
 * @param resistances of those layers, bridges included [m²K/W]
 * @param resistance  total, before correction [m²K/W]
 * @see ISO 6946:2017, Annex F
 */
export function correctionsOf(
  layers: readonly BuildUpLayer[],
  resistances: readonly number[],
  resistance: number,
  asked: CorrectionsAsked,
): Corrections {
  if (layers.length === 0) return { layer: null, airGaps: 0, fasteners: 0, weight: 0, applied: false };
  const layer = resistances.indexOf(Math.max(...resistances));
  const weight = (resistances[layer] / resistance) ** 2;
  const airGaps = airGapTransmittance[asked.airGapLevel] * weight;
  const fasteners = fastenersPerArea(layers[layer].thickness, asked.fasteners) * weight;
  return { layer, airGaps, fasteners, weight, applied: (airGaps + fasteners) * resistance >= negligible };
}

/** α·λ·n·A/d0 of the fasteners [W/(m²K)]; α = 0.8·d1/d0 of recessed ones. */
function fastenersPerArea(thickness: number | null, fasteners: Fasteners | null): number {
  if (fasteners === null || thickness === null || fasteners.conductivity < leastConductivity) return 0;
  const { conductivity, count, area, depth = thickness } = fasteners;
  const alpha = throughAndThrough * Math.min(1, depth / thickness);
  return (alpha * conductivity * count * area) / thickness;
}
