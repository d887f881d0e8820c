/** The ways heat can take through a build-up whose layers are bridged. */
import { sum } from 'simple-statistics';
import type { HeatFlow } from '../house.ts';
import { airLayerResistance } from './airLayers.ts';
import type { BuildUpLayer } from './buildUp.ts';

/** One way through one layer: beside its bridge, or along it. */
export interface Part {
  /** Share of the face [–]. */
  readonly fraction: number;
  /** [m²K/W] */
  readonly resistance: number;
  /** Mass times specific heat [J/(m²K)]; 0 where unknown and in air. */
  readonly arealHeatCapacity: number;
  readonly bridge: boolean;
}

/** One way through the whole build-up. */
export interface Section {
  readonly fraction: number;
  /** One of each layer, from inside to outside. */
  readonly parts: readonly Part[];
}

/** Bridged layers told apart in the sections; 2^10 sections are plenty, and further ones are blended. */
const mostCrossing = 10;

/** The parts of a layer, none of them empty: one without a bridge, two with one. */
export function partsOf(layer: BuildUpLayer, facing: HeatFlow): Part[] {
  const { bridge } = layer;
  const clear = {
    fraction: 1 - (bridge?.fraction ?? 0),
    resistance: resistanceOf(layer, facing),
    arealHeatCapacity: layer.kind === 'air' ? 0 : massOf(layer, layer.thickness),
    bridge: false,
  };
  if (bridge === null) return [clear];
  if (layer.thickness === null) throw new RangeError('a bridge needs the thickness of its layer');
  const bridged = {
    fraction: bridge.fraction,
    resistance: layer.thickness / bridge.conductivity,
    arealHeatCapacity: massOf(bridge, layer.thickness),
    bridge: true,
  };
  return [clear, bridged].filter((part) => part.fraction > 0);
}

/** Every combination of the layers' parts, as if bridges of different layers crossed at random. */
export function sectionsOf(layers: readonly (readonly Part[])[]): Section[] {
  let crossing = 0;
  let sections: Section[] = [{ fraction: 1, parts: [] }];
  for (const parts of layers) {
    if (parts.length > 1) crossing += 1;
    const told = crossing > mostCrossing ? [blend(parts)] : parts;
    sections = sections.flatMap((section) =>
      told.map((part) => ({
        fraction: section.fraction * part.fraction,
        parts: [...section.parts, part],
      })),
    );
  }
  return sections;
}

/** A layer's parts side by side as one homogeneous layer. */
export function blend(parts: readonly Part[]): Part {
  return {
    fraction: 1,
    resistance: 1 / sum(parts.map((part) => part.fraction / part.resistance)),
    arealHeatCapacity: sum(parts.map((part) => part.fraction * part.arealHeatCapacity)),
    bridge: false,
  };
}

function resistanceOf(layer: BuildUpLayer, facing: HeatFlow): number {
  if (layer.kind === 'stated') return layer.resistance;
  if (layer.kind === 'air') return airLayerResistance(facing, layer.thickness);
  return layer.thickness / layer.conductivity;
}

function massOf(
  { density, specificHeat }: { readonly density: number | null; readonly specificHeat: number | null },
  thickness: number | null,
): number {
  return (density ?? 0) * (specificHeat ?? 0) * (thickness ?? 0);
}
