/** An element as the network sees it: layers in a row, some of them insulation. */

import { withinVentilated } from '../../fabric/airLayers.ts';
import type { BuildUp, BuildUpLayer } from '../../fabric/buildUp.ts';
import { blend, partsOf } from '../../fabric/sections.ts';
import type { Surfaces } from '../../fabric/surfaces.ts';

export interface SlabLayer {
  /** [m²K/W] */
  readonly resistance: number;
  /** [J/(m²K)] */
  readonly arealHeatCapacity: number;
  /** Whether it is what keeps the heat in: as built over as drawn acts on it. */
  readonly insulating: boolean;
}

export interface Slab {
  /** From inside to outside, between the surfaces. */
  readonly layers: readonly SlabLayer[];
  readonly surfaces: Surfaces;
}

/** Conductivity below which a layer is insulation [W/(mK)]. */
const INSULATING_CONDUCTIVITY = 0.07;
/** A stated resistance from which a layer counts as insulation [m²K/W]. */
const INSULATING_RESISTANCE = 0.5;

/**
 * The layers of a build-up, bridged ones blended side by side, as far as the first well ventilated one. Insulation
 * is scaled so that the whole has the transmittance of the design, with its corrections, or as stated.
 *
 * @param transmittance [W/(m²K)] with `surfaces`; null leaves the layers as they are
 */
export function slabOf(buildUp: BuildUp, surfaces: Surfaces, transmittance: number | null): Slab {
  const shell = withinVentilated(buildUp, surfaces);
  const layers = shell.layers.map((layer): SlabLayer => {
    const { resistance, arealHeatCapacity } = blend(partsOf(layer, buildUp.facing));
    return { resistance, arealHeatCapacity, insulating: insulates(layer) };
  });
  const told = layers.some(({ insulating }) => insulating)
    ? layers
    : layers.map((layer) => ({ ...layer, insulating: true }));
  return {
    layers: transmittance === null ? told : matched(told, shell.surfaces, transmittance),
    surfaces: shell.surfaces,
  };
}

function insulates(layer: BuildUpLayer): boolean {
  if (layer.kind === 'solid') return layer.conductivity < INSULATING_CONDUCTIVITY;
  return layer.kind === 'stated' && layer.resistance >= INSULATING_RESISTANCE;
}

/** Insulation takes up what the layers lack or have over; all layers do where insulation alone could not. */
function matched(layers: readonly SlabLayer[], surfaces: Surfaces, transmittance: number): SlabLayer[] {
  const wanted = Math.max(1e-3, 1 / transmittance - surfaces.inside - surfaces.outside);
  const insulation = resistanceOf(layers.filter(({ insulating }) => insulating));
  const rest = resistanceOf(layers) - insulation;
  const factor = (wanted - rest) / insulation;
  if (insulation > 0 && factor > 0.3)
    return layers.map((layer) =>
      layer.insulating ? { ...layer, resistance: layer.resistance * factor } : layer,
    );
  const even = wanted / (resistanceOf(layers) || 1);
  return layers.map((layer) => ({ ...layer, resistance: layer.resistance * even }));
}

/** Sum over the layers [m²K/W]. */
export const resistanceOf = (layers: readonly SlabLayer[]): number =>
  layers.reduce((sum, { resistance }) => sum + resistance, 0);

/** Transmittance when insulation passes `insulation` times what is drawn [W/(m²K)]. */
export function slabTransmittance({ layers, surfaces }: Slab, insulation: number): number {
  const own = layers.map((layer) => layer.resistance / (layer.insulating ? insulation : 1));
  return 1 / (surfaces.inside + own.reduce((sum, it) => sum + it, 0) + surfaces.outside);
}
