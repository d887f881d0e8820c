/** The way through the record: every stage's network stepped in turn, and the heat that the air lacked meanwhile. */
import { type Building, chainsOf } from './cells.ts';
import { actInStage, driveOf } from './drive.ts';
import { readParameters } from './parameters.ts';
import { endOf, type NetworkProblem } from './problem.ts';
import { copyOf, type Drive, type Network, networkOf, type State } from './stepping.ts';

/** The networks of all stages and what acts on them, at given parameters. */
export interface Way {
  readonly networks: readonly Network[];
  readonly drive: Drive;
  /** As the first day makes it, gone through again and again. */
  readonly settled: State;
}

/** What a way already gone has in common with one at other parameters. */
export interface InCommon {
  readonly networks?: readonly Network[];
  readonly beyond?: Drive['beyond'];
}

export function wayAt(
  problem: NetworkProblem,
  x: ArrayLike<number>,
  { networks, beyond }: InCommon = {},
): Way {
  const { stages } = problem;
  const built = networks ?? stages.map((_, s) => networkAt(problem, x, s));
  const { from } = stages[0];
  const firstDay = { from, to: endOfFirstDay(problem) };
  const drive = driveOf(
    problem,
    readParameters(x, 0, stages.length).shared,
    {
      from,
      to: Math.max(problem.to, firstDay.to),
    },
    beyond,
  );
  // The first stage acts all through the first day, even where the next one stands before it is over.
  actInStage(drive, problem, 0, x, firstDay);
  const settled = settledState(problem, built[0], drive);
  stages.forEach((_, s) => {
    actInStage(drive, problem, s, x);
  });
  return { networks: built, drive, settled };
}

/** A stage's network at given parameters. */
export function networkAt({ stages, grid }: NetworkProblem, x: ArrayLike<number>, stage: number): Network {
  const { own, shared } = readParameters(x, stage, stages.length);
  const { model } = stages[stage];
  const building: Building = {
    insulation: Math.exp(own('insulation')),
    mass: Math.exp(shared('mass')),
    furniture: Math.exp(shared('furniture')),
  };
  return networkOf(chainsOf(model, building), model.airCapacity, Math.exp(shared('convection')), grid.step);
}

const DAY = 86_400; // [s]
/** The first day is gone through this often before it counts, so that no mass starts at a mere guess. */
const DAYS_BEFORE = 2;

const endOfFirstDay = ({ grid, stages }: NetworkProblem): number =>
  Math.min(stages[0].from + Math.round(DAY / grid.step), grid.length - 1);

function settledState(problem: NetworkProblem, network: Network, drive: Drive): State {
  const { from } = problem.stages[0];
  const until = endOfFirstDay(problem);
  const state = network.steady(...meansOfFirstDay(problem, drive));
  const ignored = new Float64Array(until);
  for (let k = 0; k < DAYS_BEFORE; k++) network.driven(state, drive, from, until, ignored);
  return state;
}

/** Means of the first day, inside and beyond each element [°C]. */
function meansOfFirstDay(problem: NetworkProblem, drive: Drive): [inside: number, beyond: number[]] {
  const { from } = problem.stages[0];
  const until = endOfFirstDay(problem);
  const mean = (values: Float64Array) =>
    values.subarray(from, until).reduce((sum, it) => sum + it, 0) / (until - from);
  return [mean(drive.inside), drive.beyond.map(mean)];
}

/** The settled state, as much warmer or cooler as the parameters say. */
export function stateAtStart(problem: NetworkProblem, way: Way, x: ArrayLike<number>): State {
  const offset = readParameters(x, 0, problem.stages.length).shared('start');
  const [inside, beyond] = meansOfFirstDay(problem, way.drive);
  const warmer = way.networks[0].steady(inside + offset, beyond).temperatures;
  const even = way.networks[0].steady(inside, beyond).temperatures;
  const state = copyOf(way.settled);
  for (let i = 0; i < warmer.length; i++) state.temperatures[i] += warmer[i] - even[i];
  return state;
}

/** A day of the way, or what is left of a stage. */
export interface Leg {
  readonly stage: number;
  readonly from: number;
  readonly to: number;
}

export function legsOf(problem: NetworkProblem): Leg[] {
  const day = Math.round(DAY / problem.grid.step);
  return problem.stages.flatMap(({ from }, stage) => {
    const end = endOf(problem, stage);
    const days = Math.max(1, Math.ceil((end - from) / day));
    return Array.from({ length: days }, (_, d) => ({
      stage,
      from: from + d * day,
      to: Math.min(end, from + (d + 1) * day),
    }));
  });
}

/** The heat that the air lacked in every interval of the grid [W], from the first stage on. */
export function lackingHeat(problem: NetworkProblem, x: ArrayLike<number>): Float64Array {
  const way = wayAt(problem, x);
  const lacking = new Float64Array(problem.grid.length - 1);
  const state = stateAtStart(problem, way, x);
  for (const { stage, from, to } of legsOf(problem))
    way.networks[stage].driven(state, way.drive, from, to, lacking);
  return lacking;
}
