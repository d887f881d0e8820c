/** Heat through a build-up: finite volumes about nodes, implicit in time. */

export interface SolidLayer {
  /** [m] */
  readonly thickness: number;
  /** [W/(mK)] */
  readonly conductivity: number;
  /** [kg/m³] */
  readonly density: number;
  /** [J/(kgK)] */
  readonly specificHeat: number;
}

/** A layer that only resists: an air space, a pane [m²K/W]. */
export interface BareResistance {
  readonly resistance: number;
}

export type SlabLayer = SolidLayer | BareResistance;

/** Nodes from the inside face (0) to the outside face (last), per square metre. */
export interface Slab {
  /** Of each node [J/(m²K)]. */
  readonly capacity: Float64Array;
  /** Between node k and k + 1 [W/(m²K)]. */
  readonly conductance: Float64Array;
  /** [°C] */
  readonly temperature: Float64Array;
  /** The next temperatures are `base + byInside * inside + byOutside * outside`, see `respond`. */
  readonly base: Float64Array;
  readonly byInside: Float64Array;
  readonly byOutside: Float64Array;
  /** Elimination factors. */
  readonly factor: Float64Array;
}

export const resistanceOf = (layer: SlabLayer) =>
  'resistance' in layer ? layer.resistance : layer.thickness / layer.conductivity;

/**
 * @param layers from inside to outside
 * @param outer  temperature of the outer face; in between it starts as in a steady flow [°C]
 */
export function makeSlab(layers: readonly SlabLayer[], temperature: number, outer = temperature): Slab {
  const capacity = [0];
  const conductance: number[] = [];
  for (const layer of layers) {
    const cells = 'resistance' in layer ? 1 : cellsOf(layer);
    const cellCapacity =
      'resistance' in layer ? 0 : (layer.thickness * layer.density * layer.specificHeat) / cells;
    for (let k = 0; k < cells; k++) {
      capacity[capacity.length - 1] += cellCapacity / 2;
      capacity.push(cellCapacity / 2);
      conductance.push(cells / resistanceOf(layer));
    }
  }
  const n = capacity.length;
  return {
    capacity: Float64Array.from(capacity),
    conductance: Float64Array.from(conductance),
    temperature: steadily(conductance, temperature, outer),
    base: new Float64Array(n),
    byInside: new Float64Array(n),
    byOutside: new Float64Array(n),
    factor: new Float64Array(n),
  };
}

function steadily(conductance: readonly number[], inner: number, outer: number): Float64Array {
  const whole = conductance.reduce((sum, it) => sum + 1 / it, 0);
  const profile = new Float64Array(conductance.length + 1).fill(inner);
  let passed = 0;
  conductance.forEach((it, k) => {
    passed += 1 / it;
    profile[k + 1] += (outer - inner) * (passed / whole);
  });
  return profile;
}

/** Cells of 20 mm, but three at least and ten at most. */
const cellsOf = (layer: SolidLayer) => Math.min(10, Math.max(3, Math.ceil(layer.thickness / 0.02)));

/**
 * Works out how the slab's temperatures after one step hang on what its faces are given.
 *
 * A face is given `given - conductance * its temperature` [W/m²]. The inside's `given` is left open, as the
 * outside's is when `outsideOpen`: both come out of the balance of the rooms. Otherwise it is `outsideGiven`.
 */
export function respond(
  slab: Slab,
  step: number,
  insideConductance: number,
  outsideConductance: number,
  outsideGiven: number,
  outsideOpen: boolean,
): void {
  const { capacity, conductance, temperature, base, byInside, byOutside, factor } = slab;
  const last = capacity.length - 1;
  for (let k = 0; k <= last; k++) {
    const towardsInside = k > 0 ? conductance[k - 1] : 0;
    let pivot = capacity[k] / step + towardsInside + (k < last ? conductance[k] : 0);
    let given = (capacity[k] / step) * temperature[k];
    let inside = 0;
    if (k === 0) {
      pivot += insideConductance;
      inside = 1;
    } else {
      pivot -= towardsInside * factor[k - 1];
      given += towardsInside * base[k - 1];
      inside = towardsInside * byInside[k - 1];
    }
    if (k === last) {
      pivot += outsideConductance;
      given += outsideGiven;
    }
    factor[k] = k < last ? conductance[k] / pivot : 0;
    base[k] = given / pivot;
    byInside[k] = inside / pivot;
    byOutside[k] = k === last && outsideOpen ? 1 / pivot : 0;
  }
  for (let k = last - 1; k >= 0; k--) {
    base[k] += factor[k] * base[k + 1];
    byInside[k] += factor[k] * byInside[k + 1];
    byOutside[k] = factor[k] * byOutside[k + 1];
  }
}

/** Takes the step, now that it is known what the faces are given [W/m²]. */
export function advance(slab: Slab, insideGiven: number, outsideGiven: number): void {
  const { temperature, base, byInside, byOutside } = slab;
  for (let k = 0; k < temperature.length; k++)
    temperature[k] = base[k] + byInside[k] * insideGiven + byOutside[k] * outsideGiven;
}

/** Heat held above 0 °C [J/m²]. */
export function heldHeat(slab: Slab): number {
  let held = 0;
  for (let k = 0; k < slab.capacity.length; k++) held += slab.capacity[k] * slab.temperature[k];
  return held;
}
