/** Tests that nobody has made yet, in this house as fitted and in weather like that of its own record. */
import type { JudgedNight } from '../../cooling/index.ts';
import { indexAt } from '../../series/grid.ts';
import { leakageOf } from './leakage.ts';
import { placesOf } from './parameters.ts';
import type { NetworkProblem } from './problem.ts';
import { type Span, spanOf } from './spans.ts';
import { lackingHeat, stateAtStart, wayAt } from './way.ts';

/** A problem of one stage, whose spans are those of the test alone, and the parameters as it has them. */
export interface Imagined {
  readonly problem: NetworkProblem;
  readonly x: Float64Array;
}

export interface HeatedNight extends Imagined {
  /** The warmest that the house gets [°C]. */
  readonly peak: number;
}

const DAY = 86_400; // [s]
/** The mass comes to know the weather in so many days before. */
const LEAD = 4 * DAY;
/** People switch a heater on about then, after sunset [s]. PRACTICE. */
const AFTER_SUNSET = 3600;
/** Without heat before sunrise, at least [s]: the fall is the other half of the test. */
const LEAST_FALL = 4 * 3600;
/** A house whose heat is metered is kept at this, or as warm as it was [°C]. PRACTICE. */
const KEPT_AT = 20;
const WEEK = 7;

/**
 * One night with a heater of so much power for so long from dusk on, then off; null where the night is too short for it
 * or the record begins too late before.
 *
 * @param power    [W]
 * @param duration [s]
 */
export function heatedNight(
  fitted: NetworkProblem,
  parameters: Float64Array,
  stage: number,
  { night }: JudgedNight,
  { power, duration }: { readonly power: number; readonly duration: number },
): HeatedNight | null {
  const { grid } = fitted;
  const on = indexAt(grid, night.sunset + AFTER_SUNSET);
  const off = indexAt(grid, night.sunset + AFTER_SUNSET + duration);
  const end = indexAt(grid, night.sunrise);
  const from = Math.max(fitted.stages[stage].from, on - Math.round(LEAD / grid.step));
  if (on - from < Math.round(DAY / grid.step) || end >= grid.length) return null;
  if ((end - off) * grid.step < LEAST_FALL) return null;
  const heating = new Float64Array(grid.length).fill(power, on, off);
  const x = ofStage(fitted, parameters, stage);
  const before = withHeat(fitted, stage, { from, to: end }, fitted.surroundings.inside, heating, []);
  const way = wayAt(before, x);
  const state = stateAtStart(before, way, x);
  way.networks[0].driven(state, way.drive, from, on, new Float64Array(grid.length));
  const curve = way.networks[0].free(state, way.drive, on, end, fitted.surroundings.inside[on]);
  const inside = fitted.surroundings.inside.slice();
  inside.set(curve, on);
  const span = spanOf(grid, 'heated', 0, on, end);
  return {
    problem: withHeat(fitted, stage, { from, to: end }, inside, heating, [span]),
    x,
    peak: Math.max(...curve),
  };
}

/** A week kept warm with all heat metered; null where the record is too short to show the weather of one. */
export function meteredWeek(
  fitted: NetworkProblem,
  parameters: Float64Array,
  stage: number,
  to: number,
): Imagined | null {
  const { grid, surroundings } = fitted;
  const day = Math.round(DAY / grid.step);
  const from = Math.max(fitted.stages[stage].from, to - (WEEK + 2) * day);
  const days = Math.min(WEEK, Math.floor((to - from) / day) - 1);
  if (days < WEEK) return null;
  const recorded = surroundings.inside.subarray(from, to + 1);
  const kept = Math.max(KEPT_AT, recorded.reduce((sum, it) => sum + it, 0) / recorded.length);
  const inside = surroundings.inside.slice().fill(kept, from, to + 1);
  const x = ofStage(fitted, parameters, stage);
  const reach = { from, to };
  const nothing = new Float64Array(grid.length);
  const lacking = lackingHeat(withHeat(fitted, stage, reach, inside, nothing, []), x);
  const heating = nothing.map((_, k) => Math.max(0, lacking[k] ?? 0));
  const spans = Array.from({ length: days }, (_, d) =>
    spanOf(grid, 'metered', 0, to - (d + 1) * day, to - d * day),
  );
  return { problem: withHeat(fitted, stage, reach, inside, heating, spans), x };
}

const ofStage = ({ stages }: NetworkProblem, parameters: Float64Array, stage: number): Float64Array =>
  Float64Array.from(placesOf(stage, stages.length), (k) => parameters[k]);

function withHeat(
  fitted: NetworkProblem,
  stage: number,
  { from, to }: { readonly from: number; readonly to: number },
  inside: Float64Array,
  heating: Float64Array,
  spans: readonly Span[],
): NetworkProblem {
  const surroundings = { ...fitted.surroundings, inside, heating };
  return {
    ...fitted,
    surroundings,
    leakage: leakageOf(surroundings),
    stages: [{ model: fitted.stages[stage].model, from }],
    to,
    spans,
    priors: placesOf(stage, fitted.stages.length).map((k) => fitted.priors[k]),
    metered: new Uint8Array(fitted.metered.length).fill(1, from, to + 1),
  };
}
