/** The ways heat can take through a build-up whose layers are bridged. */
import { sum } from 'simple-statistics';
import type { HeatFlow } from '../house.ts';
import { airLayerResistance } from './airLayers.ts';
import { airSpaceResistance, usualEmissivity } from './airSpaces.ts';
import type { AirLayer, BuildUpLayer } from './buildUp.ts';

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

/** Sections told apart; members that would make them more are blended into their layers. */
const mostSections = 1024;

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

/**
 * Every way through the layers. Members of different layers cross each other, so that all their combinations
 * occur by area; members that continue from one layer to the next stand behind each other.
 */
export function sectionsOf(layers: readonly BuildUpLayer[], facing: HeatFlow): Section[] {
  const parts = layers.map((layer) => partsOf(layer, facing));
  const told = parts.map((it) => [blend(it)]);
  let ways: Way[] = [{ fraction: 1, bridged: [] }];
  for (const frame of framesOf(layers)) {
    const states = statesOf(frame, layers);
    if (ways.length * states.length > mostSections) continue;
    for (const layer of frame) told[layer] = parts[layer];
    ways = ways.flatMap((way) =>
      states.map((state) => ({
        fraction: way.fraction * state.fraction,
        bridged: [...way.bridged, ...state.bridged],
      })),
    );
  }
  return ways.map(({ fraction, bridged }) => ({
    fraction,
    parts: told.map((it, layer) => it.find((part) => part.bridge === bridged.includes(layer)) ?? it[0]),
  }));
}

/** A layer's parts side by side as one homogeneous layer; no resistance where one of them has none. */
export function blend(parts: readonly Part[]): Part {
  const conductances = parts.map((part) => part.fraction / part.resistance);
  return {
    fraction: 1,
    resistance: conductances.includes(Infinity) ? 0 : 1 / sum(conductances),
    arealHeatCapacity: sum(parts.map((part) => part.fraction * part.arealHeatCapacity)),
    bridge: false,
  };
}

/** Layers that share their members, each set by position; those set apart cross each other. */
export function framesOf(layers: readonly BuildUpLayer[]): number[][] {
  const frames: number[][] = [];
  layers.forEach(({ bridge }, i) => {
    if (bridge === null) return;
    const before = frames.at(-1);
    if (bridge.continues && before !== undefined) before.push(i);
    else frames.push([i]);
  });
  return frames;
}

/** A share of the face [–], and the layers that are bridged there. */
interface Way {
  readonly fraction: number;
  readonly bridged: readonly number[];
}

/** One frame's ways: the slimmer of two members stands within the wider, so only their edges divide the face. */
function statesOf(frame: readonly number[], layers: readonly BuildUpLayer[]): Way[] {
  const fractionOf = (layer: number) => layers[layer].bridge?.fraction ?? 0;
  const edges = [...new Set([0, ...frame.map(fractionOf), 1])].sort((a, b) => b - a);
  return edges.slice(1).map((edge, i) => ({
    fraction: edges[i] - edge,
    bridged: frame.filter((layer) => fractionOf(layer) > edge),
  }));
}

function resistanceOf(layer: BuildUpLayer, facing: HeatFlow): number {
  if (layer.kind === 'stated') return layer.resistance;
  if (layer.kind === 'air') return airResistance(layer, facing);
  return layer.thickness / layer.conductivity;
}

/** By the table, unless the space is narrow or has a bright face. */
function airResistance({ thickness, width, emissivity }: AirLayer, facing: HeatFlow): number {
  const narrow = width !== undefined && width < tenfold * thickness;
  if (!narrow && emissivity === undefined) return airLayerResistance(facing, thickness);
  const across = narrow ? width : Number.POSITIVE_INFINITY;
  return airSpaceResistance({ facing, thickness, width: across, emissivity: emissivity ?? usualEmissivity });
}

/** Spaces narrower than this many times their thickness count as small. ISO 6946:2017, Annex D; MEMORY. */
const tenfold = 10;

function massOf(
  { density, specificHeat }: { readonly density: number | null; readonly specificHeat: number | null },
  thickness: number | null,
): number {
  return (density ?? 0) * (specificHeat ?? 0) * (thickness ?? 0);
}
