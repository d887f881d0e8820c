/** The network stepped through time, with the air's temperature given or left free. */

import type { Chain, Facing } from './cells.ts';

/** What acts on the network; each array as long as the grid, and without gaps. */
export interface Drive {
  /** Temperature of the air inside [°C]. */
  readonly inside: Float64Array;
  /** Beyond each chain [°C]. */
  readonly beyond: readonly Float64Array[];
  /** Radiant heat on the faces: sun through glass, and the radiant part of what is known of the heat [W]. */
  readonly radiant: Float64Array;
  /** Heat given to the air that is known [W]. */
  readonly convective: Float64Array;
  /** What goes from the air straight outside per kelvin: bridges and leakage [W/K], and where to [°C]. */
  readonly direct: Float64Array;
  readonly outside: Float64Array;
  /** Radiant heat per convective heat of what is not known of it [–]; 0 where all heat is metered. */
  readonly unknownRadiance: Float64Array;
}

export interface State {
  /** Of every cell, chain after chain [°C]. */
  readonly temperatures: Float64Array;
  /** Face less air of each chain, over the last half hour or so [K]. */
  readonly differences: Float64Array;
  /** Heat to the air that was lacking in the step before [W]. */
  lacking: number;
}

export const copyOf = ({ temperatures, differences, lacking }: State): State => ({
  temperatures: temperatures.slice(),
  differences: differences.slice(),
  lacking,
});

export interface Network {
  readonly cells: number;
  /** As in a steady state between these temperatures [°C]. */
  steady(inside: number, beyond: readonly number[]): State;
  /**
   * Steps with the air's temperature given. Writes into `lacking[k]`, from `from` to before `to`, the heat
   * [W] that the air needed between instants k and k + 1 beyond what is known.
   */
  driven(state: State, drive: Drive, from: number, to: number, lacking: Float64Array): void;
  /** Steps with the air left free from instant `from`, where its temperature is given, to `to`; [°C] for each. */
  free(state: State, drive: Drive, from: number, to: number, start: number): Float64Array;
}

/** Radiation between faces at 20 °C and an emissivity of 0.9 [W/(m²K)]. */
const RADIATION = 5.1;
/** Combined inside film of ISO 6946:2017, for the steady state from which a record begins [W/(m²K)]. */
const STEADY_FILM = 7.7;
/**
 * Natural convection at a face [W/(m²K)]: factor times the cube root of the difference, heat rising freely at the
 * first, lying still at the second.
 *
 * @see Walton, Thermal Analysis Research Program Reference Manual, NBSIR 83-2655 (1983), at small tilts
 */
const NATURAL: Readonly<Record<Facing, readonly [warmFace: number, coolFace: number]>> = {
  wall: [1.31, 1.31],
  floor: [1.51, 0.76],
  ceiling: [0.76, 1.51],
};
/** Air is never quite at rest [W/(m²K)]. PRACTICE. */
const STIRRED = 0.5;
/** Over which a face's difference is averaged [s]: shorter swings are the loggers'. */
const SETTLING = 1800;

/**
 * All faces exchange heat with the air by convection and with one radiant node ("star") by radiation. Steps by
 * the trapezoidal rule: one solution in the middle of each step, which is second order and keeps energy.
 *
 * @param airCapacity [J/K]
 * @param convection  factor on natural convection at every face [–]
 * @param step        [s]
 * @see ISO 52016-1:2017, 6.5.6 (node equations); Davies, Building Heat Transfer, 2004 (the star)
 */
export function networkOf(
  chains: readonly Chain[],
  airCapacity: number,
  convection: number,
  step: number,
): Network {
  const count = chains.length;
  const starts = new Int32Array(count + 1);
  chains.forEach(({ capacities }, c) => {
    starts[c + 1] = starts[c] + capacities.length;
  });
  const cells = starts[count];
  const { storing, inverse, passed, carried } = eliminated(chains, starts, step);
  /** What a watt per square metre through the face makes of each cell of its chain [m²K/W]. */
  const response = new Float64Array(cells);
  for (let c = 0; c < count; c++) {
    response[starts[c]] = inverse[starts[c]];
    for (let i = starts[c] + 1; i < starts[c + 1]; i++) response[i] = passed[i] * response[i - 1];
    for (let i = starts[c + 1] - 2; i >= starts[c]; i--) response[i] += carried[i] * response[i + 1];
  }

  const area = Float64Array.from(chains, (chain) => chain.area);
  const toFace = Float64Array.from(chains, ({ toInside }) => toInside);
  const toBeyond = Float64Array.from(chains, (chain) => chain.toBeyond);
  const whenWarm = Float64Array.from(chains, ({ facing }) => NATURAL[facing][0]);
  const whenCool = Float64Array.from(chains, ({ facing }) => NATURAL[facing][1]);
  const blend = 1 - Math.exp(-step / SETTLING);

  const middle = new Float64Array(cells);
  const toAir = new Float64Array(count);
  const toStar = new Float64Array(count);
  const films = new Float64Array(count);
  /**
   * Sums over all faces of the step at hand [W/K], and what the cells give at zero air and star [W]. As properties:
   * a variable that a closure writes numbers to costs an allocation each time.
   */
  const sums = { starByStar: 0, airByStar: 0, airByAir: 0, starHeat: 0, airHeat: 0 };

  /** The middle of a step with air and star at zero, and how it answers to both. */
  const prepare = ({ temperatures, differences }: State, beyond: readonly Float64Array[], k: number) => {
    // Gauss's elimination of each chain as if no heat passed its face: outward, then back.
    for (let c = 0; c < count; c++) {
      const first = starts[c];
      const last = starts[c + 1] - 1;
      let value = 0;
      for (let i = first; i <= last; i++) {
        value = storing[i] * temperatures[i] + passed[i] * value;
        middle[i] = value;
      }
      if (toBeyond[c] > 0) value += (inverse[last] * toBeyond[c] * (beyond[c][k] + beyond[c][k + 1])) / 2;
      middle[last] = value;
      for (let i = last - 1; i >= first; i--) {
        value = middle[i] + carried[i] * value;
        middle[i] = value;
      }
    }
    let starByStar = 0;
    let airByStar = 0;
    let airByAir = 0;
    let starHeat = 0;
    let airHeat = 0;
    for (let c = 0; c < count; c++) {
      const difference = differences[c];
      const natural = difference > 0 ? whenWarm[c] : whenCool[c];
      const film = convection * (STIRRED + natural * Math.cbrt(Math.abs(difference)));
      // The massless surface is taken out: star to triangle between air, radiant node and first cell.
      const all = film + RADIATION + toFace[c];
      const air = (film * toFace[c]) / all;
      const star = (RADIATION * toFace[c]) / all;
      const past = (film * RADIATION) / all;
      const own = response[starts[c]];
      const held = 1 / (1 + own * (air + star));
      films[c] = film;
      toAir[c] = air;
      toStar[c] = star;
      starByStar += area[c] * (star * (1 - held * own * star) + past);
      airByAir += area[c] * (air * (1 - held * own * air) + past);
      airByStar += area[c] * (star * held * own * air + past);
      starHeat += area[c] * star * held * middle[starts[c]];
      airHeat += area[c] * air * held * middle[starts[c]];
    }
    sums.starByStar = starByStar;
    sums.airByStar = airByStar;
    sums.airByAir = airByAir;
    sums.starHeat = starHeat;
    sums.airHeat = airHeat;
  };
  const advance = ({ temperatures, differences }: State, air: number, star: number) => {
    for (let c = 0; c < count; c++) {
      const first = starts[c];
      const coupling = toAir[c] + toStar[c];
      const driven = toAir[c] * air + toStar[c] * star;
      const flow = (driven - coupling * middle[first]) / (1 + response[first] * coupling);
      const end = starts[c + 1];
      for (let i = first; i < end; i++)
        temperatures[i] = 2 * (middle[i] + response[i] * flow) - temperatures[i];
      const cell = middle[first] + response[first] * flow;
      const surface =
        (films[c] * air + RADIATION * star + toFace[c] * cell) / (films[c] + RADIATION + toFace[c]);
      differences[c] += blend * (surface - air - differences[c]);
    }
  };

  return {
    cells,
    steady(inside, beyond) {
      const temperatures = new Float64Array(cells);
      const differences = new Float64Array(count);
      chains.forEach(({ toInside, conductances, capacities, ...chain }, c) => {
        const outer = chain.toBeyond === 0 ? Number.POSITIVE_INFINITY : 1 / chain.toBeyond;
        const whole = 1 / STEADY_FILM + 1 / toInside + conductances.reduce((sum, it) => sum + 1 / it, outer);
        const fall = (chain.toBeyond === 0 ? 0 : beyond[c] - inside) / whole;
        differences[c] = fall / STEADY_FILM;
        let passed = 1 / STEADY_FILM + 1 / toInside;
        for (let j = 0; j < capacities.length; j++) {
          temperatures[starts[c] + j] = inside + fall * passed;
          passed += 1 / conductances[j];
        }
      });
      return { temperatures, differences, lacking: 0 };
    },
    driven(state, drive, from, to, lacking) {
      for (let k = from; k < to; k++) {
        const air = (drive.inside[k] + drive.inside[k + 1]) / 2;
        prepare(state, drive.beyond, k);
        const { starByStar, airByStar, airByAir, starHeat, airHeat } = sums;
        const followed = Math.max(0, state.lacking) * drive.unknownRadiance[k];
        const star = (starHeat + airByStar * air + drive.radiant[k] + followed) / starByStar;
        const toFaces = airByAir * air - airHeat - airByStar * star;
        const stored = (airCapacity * (drive.inside[k + 1] - drive.inside[k])) / step;
        const outside = (drive.outside[k] + drive.outside[k + 1]) / 2;
        state.lacking = stored + toFaces + drive.direct[k] * (air - outside) - drive.convective[k];
        lacking[k] = state.lacking;
        advance(state, air, star);
      }
    },
    free(state, drive, from, to, start) {
      const curve = new Float64Array(to - from + 1);
      curve[0] = start;
      const hold = (2 * airCapacity) / step;
      for (let k = from; k < to; k++) {
        prepare(state, drive.beyond, k);
        const { starByStar, airByStar, airByAir, starHeat, airHeat } = sums;
        const outside = (drive.outside[k] + drive.outside[k + 1]) / 2;
        const onStar = starHeat + drive.radiant[k];
        const onAir = hold * curve[k - from] + airHeat + drive.direct[k] * outside + drive.convective[k];
        // star: starByStar·S = airByStar·A + onStar; air: (hold + airByAir + direct)·A = airByStar·S + onAir
        const air =
          (onAir + (airByStar * onStar) / starByStar) /
          (hold + airByAir + drive.direct[k] - airByStar ** 2 / starByStar);
        curve[k - from + 1] = 2 * air - curve[k - from];
        advance(state, air, (airByStar * air + onStar) / starByStar);
      }
      return curve;
    },
  };
}

/**
 * The tridiagonal system of the middle of a step, with what elimination leaves: one over each pivot, capacity over
 * half a step times that, and what a cell takes of the one before it (outward) and after it (back).
 */
function eliminated(chains: readonly Chain[], starts: Int32Array, step: number) {
  const cells = starts[chains.length];
  const storing = new Float64Array(cells);
  const inverse = new Float64Array(cells);
  const passed = new Float64Array(cells);
  const carried = new Float64Array(cells);
  chains.forEach(({ capacities, conductances, toBeyond }, c) => {
    const last = capacities.length - 1;
    for (let j = 0; j <= last; j++) {
      const i = starts[c] + j;
      const held = (2 * capacities[j]) / step;
      const before = j > 0 ? conductances[j - 1] : 0;
      const next = j < last ? conductances[j] : toBeyond;
      inverse[i] = 1 / (held + before + next - before * (j > 0 ? carried[i - 1] : 0));
      storing[i] = held * inverse[i];
      passed[i] = before * inverse[i];
      carried[i] = j < last ? next * inverse[i] : 0;
    }
  });
  return { storing, inverse, passed, carried };
}
