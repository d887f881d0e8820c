/**
 * The same physics worked out apart from the stepping: all temperatures as unknowns, a dense solution for the steady
 * state and fourth-order Runge and Kutta for the course. Films by Walton, NBSIR 83-2655 (1983), at small tilts, and
 * 4·ε·σ·T³ = 4·0.9·5.67e-8·292.6³ = 5.1 W/(m²K); both MEMORY, as the network states them.
 */
import type { Chain } from '../../../src/heatloss/network/cells.ts';

const RADIATION = 5.1;
const STIRRED = 0.5;
const WALTON = { still: 0.76, upright: 1.31, rising: 1.51 };

/** [W/(m²K)] */
export function filmOf(facing: Chain['facing'], difference: number): number {
  const rises = facing === 'floor' ? difference > 0 : difference <= 0;
  const factor = facing === 'wall' ? WALTON.upright : rises ? WALTON.rising : WALTON.still;
  return STIRRED + factor * Math.cbrt(Math.abs(difference));
}

export interface Steady {
  readonly beyond: readonly number[];
  readonly inside: number;
  readonly outside: number;
  readonly radiant: number;
  readonly convective: number;
  readonly direct: number;
}

/** Heat that the air lacks when nothing changes any more [W]. */
export function steadyLoss(chains: readonly Chain[], at: Steady): number {
  const behind = chains.map(({ toInside, conductances, toBeyond }) =>
    toBeyond === 0 ? 0 : 1 / (1 / toInside + conductances.reduce((sum, it) => sum + 1 / it, 1 / toBeyond)),
  );
  let surfaces = chains.map(() => at.inside);
  // Films follow the surfaces; a few hundred halved rounds settle both.
  for (let round = 0; round < 400; round++) {
    const films = chains.map(({ facing }, c) => filmOf(facing, surfaces[c] - at.inside));
    const next = surfacesAndStar(chains, behind, films, at);
    surfaces = surfaces.map((it, c) => (it + next[c]) / 2);
  }
  const toFaces = chains.reduce(
    (sum, { area, facing }, c) =>
      sum + area * filmOf(facing, surfaces[c] - at.inside) * (at.inside - surfaces[c]),
    0,
  );
  return toFaces + at.direct * (at.inside - at.outside) - at.convective;
}

/** Unknowns: each surface, then the star. */
function surfacesAndStar(
  chains: readonly Chain[],
  behind: readonly number[],
  films: readonly number[],
  at: Steady,
): number[] {
  const size = chains.length + 1;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  chains.forEach(({ area }, c) => {
    matrix[c][c] = films[c] + RADIATION + behind[c];
    matrix[c][size - 1] = -RADIATION;
    right[c] = films[c] * at.inside + behind[c] * (at.beyond[c] ?? 0);
    matrix[size - 1][size - 1] += area * RADIATION;
    matrix[size - 1][c] = -area * RADIATION;
  });
  right[size - 1] = at.radiant;
  return gauss(matrix, right);
}

/** Elimination with row exchange, in place. */
function gauss(matrix: number[][], right: number[]): number[] {
  const size = right.length;
  for (let i = 0; i < size; i++) {
    let pivot = i;
    for (let r = i + 1; r < size; r++) if (Math.abs(matrix[r][i]) > Math.abs(matrix[pivot][i])) pivot = r;
    [matrix[i], matrix[pivot]] = [matrix[pivot], matrix[i]];
    [right[i], right[pivot]] = [right[pivot], right[i]];
    for (let r = i + 1; r < size; r++) {
      const factor = matrix[r][i] / matrix[i][i];
      for (let k = i; k < size; k++) matrix[r][k] -= factor * matrix[i][k];
      right[r] -= factor * right[i];
    }
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) right[i] -= matrix[i][k] * right[k];
    right[i] /= matrix[i][i];
  }
  return right;
}

export interface Course {
  readonly chains: readonly Chain[];
  /** [J/K] */
  readonly airCapacity: number;
  readonly radiant: number;
  readonly convective: number;
  readonly direct: number;
  /** At a time [s]. */
  outside(time: number): number;
  beyond(time: number, chain: number): number;
  /** At time 0. */
  readonly air: number;
  readonly temperatures: Float64Array;
  readonly differences: Float64Array;
}

/** The air left free, at each multiple of `every` up to `until` [s]; the faces' differences settle in half an hour. */
export function freeCourse(course: Course, every: number, until: number, step: number): number[] {
  const { chains } = course;
  let state = [course.air, ...course.temperatures, ...course.differences];
  const curve = [course.air];
  const plus = (a: readonly number[], b: readonly number[], h: number) => a.map((it, i) => it + h * b[i]);
  for (let n = 1; n * step <= until + 1e-6; n++) {
    const time = (n - 1) * step;
    const k1 = slopes(course, chains, state, time);
    const k2 = slopes(course, chains, plus(state, k1, step / 2), time + step / 2);
    const k3 = slopes(course, chains, plus(state, k2, step / 2), time + step / 2);
    const k4 = slopes(course, chains, plus(state, k3, step), time + step);
    state = state.map((it, i) => it + (step / 6) * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]));
    if (Math.abs((n * step) / every - Math.round((n * step) / every)) < 1e-9) curve.push(state[0]);
  }
  return curve;
}

const SETTLING = 1800; // [s]

/** Of the air, every cell, and every face's settled difference. */
function slopes(
  { airCapacity, radiant, convective, direct, outside, beyond }: Course,
  chains: readonly Chain[],
  state: readonly number[],
  time: number,
): number[] {
  const cells = chains.reduce((sum, { capacities }) => sum + capacities.length, 0);
  const air = state[0];
  const starts: number[] = [];
  let at = 1;
  for (const { capacities } of chains) {
    starts.push(at);
    at += capacities.length;
  }
  const films = chains.map(({ facing }, c) => filmOf(facing, state[1 + cells + c]));
  // Surface = a + b·star; the star's balance then gives the star.
  const a = chains.map(
    ({ toInside }, c) => (films[c] * air + toInside * state[starts[c]]) / (films[c] + RADIATION + toInside),
  );
  const b = chains.map(({ toInside }, c) => RADIATION / (films[c] + RADIATION + toInside));
  let given = radiant;
  let asked = 0;
  chains.forEach(({ area }, c) => {
    given += area * RADIATION * a[c];
    asked += area * RADIATION * (1 - b[c]);
  });
  const star = given / asked;
  const out = new Array<number>(state.length).fill(0);
  let toAir = convective - direct * (air - outside(time));
  chains.forEach(({ area, capacities, conductances, toInside, toBeyond }, c) => {
    const surface = a[c] + b[c] * star;
    toAir += area * films[c] * (surface - air);
    const last = capacities.length - 1;
    for (let j = 0; j <= last; j++) {
      const own = state[starts[c] + j];
      const before =
        j === 0 ? toInside * (surface - own) : conductances[j - 1] * (state[starts[c] + j - 1] - own);
      const next =
        j === last
          ? toBeyond === 0
            ? 0
            : toBeyond * (beyond(time, c) - own)
          : conductances[j] * (state[starts[c] + j + 1] - own);
      out[starts[c] + j] = (before + next) / capacities[j];
    }
    out[1 + cells + c] = (surface - air - state[1 + cells + c]) / SETTLING;
  });
  out[0] = toAir / airCapacity;
  return out;
}
