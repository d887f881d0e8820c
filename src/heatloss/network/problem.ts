/** The house at given parameters: what heat its air lacked, and what it loses per kelvin. */
import type { Grid } from '../../series/grid.ts';
import { type Building, chainsOf } from './cells.ts';
import { driveOf, leakageShape, windShareOf } from './drive.ts';
import type { NetworkModel } from './model.ts';
import { type Prior, readParameters } from './parameters.ts';
import { slabTransmittance } from './slab.ts';
import type { Span } from './spans.ts';
import { type Drive, type Network, networkOf, type State } from './stepping.ts';
import type { Surroundings } from './surroundings.ts';

export interface NetworkStage {
  /** All with the same elements in the same order; one that is missing has no area. */
  readonly model: NetworkModel;
  /** The instant of the grid from which it stands; of the first stage, from which the record is gone through. */
  readonly from: number;
}

export interface NetworkProblem {
  readonly grid: Grid;
  readonly surroundings: Surroundings;
  readonly stages: readonly NetworkStage[];
  /** The instant of the grid after which nothing counts. */
  readonly to: number;
  readonly spans: readonly Span[];
  /** As stated [W]. */
  readonly constantGains: number;
  /** 1 at instants whose heat is all metered. */
  readonly metered: Uint8Array;
  readonly priors: readonly Prior[];
}

/** A stage's network and what acts on it, at given parameters. */
export interface Built {
  readonly network: Network;
  readonly drive: Drive;
}

export function builtAt(problem: NetworkProblem, x: ArrayLike<number>, stage: number): Built {
  const { surroundings, stages, grid } = problem;
  const { own, shared } = readParameters(x, stage, stages.length);
  const { model } = stages[stage];
  const convection = Math.exp(shared('convection'));
  const building: Building = {
    insulation: Math.exp(own('insulation')),
    mass: Math.exp(shared('mass')),
    furniture: Math.exp(shared('furniture')),
  };
  const shape = leakageShape(surroundings, windShareOf(shared));
  const leakage = shape.map((it) => it * Math.exp(own('leakage')));
  return {
    network: networkOf(chainsOf(model, building), model.airCapacity, convection, grid.step),
    drive: driveOf(model, surroundings, shared, leakage, problem.constantGains, problem.metered),
  };
}

/** The instant up to which a stage stands. */
export const endOf = ({ stages, to }: NetworkProblem, stage: number): number => stages[stage + 1]?.from ?? to;

/** The heat that the air lacked in every interval of the grid [W], from the first stage on. */
export function lackingHeat(problem: NetworkProblem, x: ArrayLike<number>): Float64Array {
  const { stages, grid } = problem;
  const lacking = new Float64Array(grid.length - 1);
  let state: State | null = null;
  stages.forEach(({ from }, s) => {
    const built = builtAt(problem, x, s);
    state ??= stateAtStart(problem, built, x);
    built.network.driven(state, built.drive, from, endOf(problem, s), lacking);
  });
  return lacking;
}

const DAY = 86_400; // [s]
/** The first day is gone through this often before it counts, so that no mass starts at a mere guess. */
const DAYS_BEFORE = 2;

/** As the first day makes it, and as much warmer or cooler as the parameters say. */
export function stateAtStart(
  { grid, stages }: NetworkProblem,
  { network, drive }: Built,
  x: ArrayLike<number>,
): State {
  const offset = readParameters(x, 0, stages.length).shared('start');
  const { from } = stages[0];
  const until = Math.min(from + Math.round(DAY / grid.step), grid.length - 1);
  const mean = (values: Float64Array) =>
    values.subarray(from, until).reduce((sum, it) => sum + it, 0) / (until - from);
  const beyond = drive.beyond.map(mean);
  const inside = mean(drive.inside);
  const state = network.steady(inside, beyond);
  const ignored = new Float64Array(grid.length);
  for (let k = 0; k < DAYS_BEFORE; k++) network.driven(state, drive, from, until, ignored);
  const warmer = network.steady(inside + offset, beyond).temperatures;
  const even = network.steady(inside, beyond).temperatures;
  for (let i = 0; i < warmer.length; i++) state.temperatures[i] += warmer[i] - even[i];
  return state;
}

/** Heat-loss coefficient of a stage at given parameters [W/K]: fabric as U × A, bridges, and the leakage of its spans. */
export function heatLossAt(problem: NetworkProblem, x: ArrayLike<number>, stage: number): number {
  const { own, shared } = readParameters(x, stage, problem.stages.length);
  const { model } = problem.stages[stage];
  const insulation = Math.exp(own('insulation'));
  const fabric = model.elements.reduce(
    (sum, { area, slab, fixed, temperatureFactor }) =>
      sum + area * temperatureFactor * slabTransmittance(slab, fixed ? 1 : insulation),
    0,
  );
  const shape = leakageShape(problem.surroundings, windShareOf(shared));
  const mean = meanOver(
    shape,
    problem.spans.filter((it) => it.stage === stage),
  );
  return fabric + model.bridges + model.ventilation * Math.exp(own('leakage')) * mean;
}

function meanOver(values: Float64Array, spans: readonly Span[]): number {
  let sum = 0;
  let count = 0;
  for (const { blocks } of spans)
    for (const { from, to } of blocks)
      for (let k = from; k < to; k++) {
        sum += values[k];
        count++;
      }
  return count === 0 ? 1 : sum / count;
}
