/**
 * Effective capacity over time constant: the design's network cools through the same nights as the house did, and its
 * losses are scaled until both have the same time constant. What capacity a night really works with need not be known.
 */
import { fitDecay } from '../../cooling/index.ts';
import { timesBetween } from '../../series/grid.ts';
import { actInStage } from './drive.ts';
import type { FittedNight } from './fittedNights.ts';
import { stageKeys } from './parameters.ts';
import { endOf, heatLossAt, type NetworkProblem } from './problem.ts';
import { copyOf } from './stepping.ts';
import { stateAtStart, wayAt } from './way.ts';

const MOST_ROUNDS = 6;
/** Of the mean logarithm of the time constants [–]. */
const CLOSE_ENOUGH = 1e-3;
/** What is left of it where a scale counts as found [–]. */
const NEAR_ENOUGH = 0.02;
const settled = (off: number) => Number.isNaN(off) || Math.abs(off) < CLOSE_ENOUGH;
/** Losses are scaled from a fifth to five times what is drawn; outside of that the design is not this house's. */
const FARTHEST = Math.log(5);
const STANDS_STILL = Math.log(10);

/**
 * Heat-loss coefficient of each stage [W/K]; null for a stage without nights or where no scale makes both agree.
 *
 * @param driver what the house cools towards, as in the nights' own fits [°C]
 */
export function effectiveCapacity(
  problem: NetworkProblem,
  nights: readonly FittedNight[],
  driver: Float64Array,
): (number | null)[] {
  const scales = problem.stages.map(() => 0);
  const slopes = problem.stages.map(() => -1);
  let tried: { readonly scales: readonly number[]; readonly offs: readonly number[] } | null = null;
  let offs = meanOffs(problem, nights, driver, scales);
  for (let round = 0; round < MOST_ROUNDS && !offs.every(settled); round++) {
    const last = tried;
    tried = { scales: scales.slice(), offs };
    offs.forEach((off, s) => {
      if (Number.isNaN(off)) return;
      const moved = last === null ? 0 : scales[s] - last.scales[s];
      if (last !== null && Math.abs(moved) > 1e-6) {
        const slope = (off - last.offs[s]) / moved;
        if (slope < -0.1) slopes[s] = slope;
      }
      scales[s] = Math.max(-FARTHEST, Math.min(FARTHEST, scales[s] - off / slopes[s]));
    });
    offs = meanOffs(problem, nights, driver, scales);
  }
  const x = parametersAt(problem, scales);
  return offs.map((off, s) => (Math.abs(off) < NEAR_ENOUGH ? heatLossAt(problem, x, s) : null));
}

/** As believed beforehand, but for insulation and leakage that pass the same multiple of what is drawn. */
function parametersAt({ priors }: NetworkProblem, scales: readonly number[]): Float64Array {
  const x = Float64Array.from(priors, ({ mean }) => mean);
  scales.forEach((scale, s) => {
    stageKeys.forEach((_, k) => {
      x[s * stageKeys.length + k] = scale;
    });
  });
  return x;
}

/** Of each stage, the mean of ln(time constant of the network / of the house) over its nights; NaN without any. */
function meanOffs(
  problem: NetworkProblem,
  nights: readonly FittedNight[],
  driver: Float64Array,
  scales: readonly number[],
): number[] {
  const { grid } = problem;
  const x = parametersAt(problem, scales);
  const ignored = new Float64Array(grid.length - 1);
  const way = wayAt(problem, x);
  const { drive, networks } = way;
  const state = stateAtStart(problem, way, x);
  return problem.stages.map(({ from }, s) => {
    const network = networks[s];
    const own = nights.filter(({ stage }) => stage === s);
    const end = endOf(problem, s);
    // The last night of a stage may end when by its date the next one stands.
    actInStage(drive, problem, s, x, { from, to: Math.max(end, ...own.map(({ last }) => last)) });
    const offs: number[] = [];
    let at = from;
    for (const { first, last, timeConstant } of own) {
      network.driven(state, drive, at, first, ignored);
      at = first;
      const curve = network.free(copyOf(state), drive, first, last, drive.inside[first]);
      const fit = fitDecay(timesBetween(grid, first, last), curve, driver.subarray(first, last + 1));
      // A network that does not cool at all loses far too little.
      offs.push(fit.kind === 'fitted' ? Math.log(fit.timeConstant.value / timeConstant) : STANDS_STILL);
    }
    network.driven(state, drive, at, end, ignored);
    return offs.length === 0 ? Number.NaN : offs.reduce((sum, it) => sum + it, 0) / offs.length;
  });
}
