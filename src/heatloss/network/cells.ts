/** Slabs cut into cells of heat capacity with conductances between them: what is stepped through time. */
import type { NetworkElement } from './elements.ts';
import type { NetworkModel } from './model.ts';
import { resistanceOf, type Slab, type SlabLayer } from './slab.ts';

/** What the network is built with, over what is drawn. */
export interface Building {
  /** What insulation passes over what is drawn [–]. */
  readonly insulation: number;
  /** Heat capacity of the fabric, and of the furniture, over what is drawn [–]. */
  readonly mass: number;
  readonly furniture: number;
}

/** Which way a face looks, for the air that rises or lies still at it. */
export type Facing = 'wall' | 'floor' | 'ceiling';

/** A row of cells per area of an element, from the room to what lies beyond. */
export interface Chain {
  /** [m²] */
  readonly area: number;
  readonly facing: Facing;
  /** Each cell's heat capacity [J/(m²K)]. */
  readonly capacities: Float64Array;
  /** Between each cell and the next; one less than cells [W/(m²K)]. */
  readonly conductances: Float64Array;
  /** From the face to the first cell, and from the last cell to what lies beyond, 0 where nothing does [W/(m²K)]. */
  readonly toInside: number;
  readonly toBeyond: number;
}

/** A cell's own time constant, resistance times capacity, is about this [s]: some 20 mm of brick. Keeps ISO 13786 to 0.5 %. */
const CELL_TIME = 1000;
/** A layer that holds less than this is resistance only [J/(m²K)]. */
const LEAST_CAPACITY = 500;
/** The smallest resistance between two cells that is told from none [m²K/W]. */
const LEAST_RESISTANCE = 1e-3;

/** One chain of each element; then the far halves of the inner ones, then the furniture. */
export function chainsOf(model: NetworkModel, building: Building): Chain[] {
  const arealCapacity = (model.furnitureCapacity / model.furnitureArea) * building.furniture;
  const furniture: Chain = {
    area: model.furnitureArea,
    facing: 'wall',
    capacities: Float64Array.of(arealCapacity),
    conductances: new Float64Array(0),
    toInside: 20,
    toBeyond: 0,
  };
  const inner = model.elements.filter(({ beyond }) => beyond === 'inside');
  return [
    ...model.elements.map((element) => nearChain(element, building)),
    ...inner.map((element) => halfChain(element, building, 'far')),
    furniture,
  ];
}

const nearChain = (element: NetworkElement, building: Building): Chain =>
  element.beyond === 'inside'
    ? halfChain(element, building, 'near')
    : { ...chainOf(element, building), area: element.area, facing: element.facing };

/** Both faces of an inner element are as warm, so that no heat crosses the middle of its resistance. */
function halfChain(element: NetworkElement, building: Building, half: 'near' | 'far'): Chain {
  const { layers } = element.slab;
  const inOrder = half === 'near' ? layers : layers.toReversed();
  const slab = { layers: firstHalf(inOrder), surfaces: element.slab.surfaces };
  const opposite = { ceiling: 'floor', floor: 'ceiling', wall: 'wall' } as const;
  return {
    ...chainOf({ ...element, slab }, building),
    area: element.area,
    facing: half === 'near' ? element.facing : opposite[element.facing],
    toBeyond: 0,
  };
}

function firstHalf(layers: readonly SlabLayer[]): SlabLayer[] {
  const half: SlabLayer[] = [];
  let left = resistanceOf(layers) / 2;
  for (const layer of layers) {
    const share = layer.resistance > left ? left / layer.resistance : 1;
    half.push({
      ...layer,
      resistance: layer.resistance * share,
      arealHeatCapacity: layer.arealHeatCapacity * share,
    });
    left -= layer.resistance;
    if (left <= 0) break;
  }
  return half;
}

function chainOf({ slab, fixed }: { readonly slab: Slab; readonly fixed: boolean }, building: Building) {
  const insulation = fixed ? 1 : building.insulation;
  const capacities: number[] = [];
  const conductances: number[] = [];
  // Resistance since the middle of the cell before, or since the face.
  let resistance = 0;
  let toInside = 0;
  for (const part of slab.layers.flatMap((layer) => cut(layer, insulation))) {
    if (part.arealHeatCapacity === 0) {
      resistance += part.resistance;
      continue;
    }
    const conductance = 1 / Math.max(resistance + part.resistance / 2, LEAST_RESISTANCE);
    if (capacities.length === 0) toInside = conductance;
    else conductances.push(conductance);
    capacities.push(part.arealHeatCapacity * building.mass);
    resistance = part.resistance / 2;
  }
  if (capacities.length === 0) {
    // Nothing in it stores heat worth the name: any board holds this much.
    capacities.push(LEAST_CAPACITY);
    resistance /= 2;
    toInside = 1 / Math.max(resistance, LEAST_RESISTANCE);
  }
  return {
    capacities: Float64Array.from(capacities),
    conductances: Float64Array.from(conductances),
    toInside,
    toBeyond: 1 / Math.max(resistance + slab.surfaces.outside, LEAST_RESISTANCE),
  };
}

/** The number of cells stays that of the layer as drawn, so that parameters move nothing by steps. */
function cut(layer: SlabLayer, insulation: number): SlabLayer[] {
  const { insulating } = layer;
  const arealHeatCapacity = layer.arealHeatCapacity < LEAST_CAPACITY ? 0 : layer.arealHeatCapacity;
  const count = Math.max(1, Math.ceil(Math.sqrt((layer.resistance * arealHeatCapacity) / CELL_TIME)));
  const resistance = layer.resistance / (insulating ? insulation : 1) / count;
  return Array.from({ length: count }, () => ({
    resistance,
    arealHeatCapacity: arealHeatCapacity / count,
    insulating,
  }));
}
