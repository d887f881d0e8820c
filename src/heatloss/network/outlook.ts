/** What a further test would leave of the doubt: each imagined in this house as fitted, in weather like its own. */
import type { Tier } from '../../assessment.ts';
import type { JudgedNight, StageNights } from '../../cooling/index.ts';
import type { Matrix } from '../../maths/matrix.ts';
import { covarianceOf, type Posterior } from '../../maths/maximumPosterior.ts';
import { timeAt } from '../../series/grid.ts';
import { combinedSd, type EffectiveRestsOn, effectiveSd, networkSd } from './beyond.ts';
import { informationOf } from './fit.ts';
import { type HeatedNight, heatedNight, type Imagined, meteredWeek } from './imagined.ts';
import { leakageOf } from './leakage.ts';
import { type Prior, placesOf, type SharedKey, SUN_LOGGED_SD, sharedPlace } from './parameters.ts';
import { heatLossAt, type NetworkProblem } from './problem.ts';
import { logFigure } from './uncertainty.ts';

export type FurtherTest =
  | { readonly kind: 'more-nights'; readonly nights: number }
  /** A heater of so much power [W] for so long [s] from dusk; it gets no warmer than `peak` [°C]. */
  | {
      readonly kind: 'heated-night';
      readonly power: number;
      readonly duration: number;
      readonly peak: number;
    }
  /** All heat metered, the sun logged. */
  | { readonly kind: 'metered-week' }
  | { readonly kind: 'loggers-side-by-side' }
  | { readonly kind: 'logger-next-door' }
  | { readonly kind: 'capacity-known' }
  | { readonly kind: 'wind-logged' };

export interface Outlook {
  readonly test: FurtherTest;
  /** The tier that the figure would have. */
  readonly tier: Tier;
  /** Of the heat loss: one standard deviation of the logarithm that would be left. */
  readonly logSd: number;
}

/** A stage as it was fitted. */
export interface Fitted {
  readonly problem: NetworkProblem;
  readonly posterior: Posterior;
  readonly stage: number;
  readonly nights: StageNights;
  readonly tier: Tier;
  readonly madeUp: boolean;
  /** Where the figure by effective capacity counts too: how far apart [–], and what it rests on. */
  readonly other: (EffectiveRestsOn & { readonly logApart: number }) | null;
}

const MORE_NIGHTS = [7, 21];
/** What one socket's circuit carries for hours, and two of them [W]. PRACTICE. */
const POWERS = [1000, 1500, 2000, 2500, 5000];
const DURATIONS = [4, 6, 8].map((hours) => hours * 3600); // [s]
/** Warmer than this nobody should heat a building site by night [°C]. PRACTICE. */
const WARMEST = 28;
/** What is left once loggers lay side by side, hung next door, or the layers were looked at. PRACTICE. */
const SIDE_BY_SIDE = 0.05; // [K]
const NEXT_DOOR = 0.3; // [K]
const LOOKED_AT = 0.08; // of the capacity

/** Those tests that this stage can still gain from. */
export function outlooksOf(fitted: Fitted): Outlook[] {
  const { problem, posterior, tier } = fitted;
  const { priors } = problem;
  const left = (test: FurtherTest, information: Matrix, own: readonly Prior[] = priors, then = tier) => {
    const logSd = sdWith(fitted, information, own, then, test);
    return logSd === null ? [] : [{ test, tier: then, logSd }];
  };
  const { information } = posterior;
  const outlooks: Outlook[] = [];
  const have = fitted.nights.nights.filter(({ used }) => used).length;
  if (tier === 'loggers')
    for (const nights of MORE_NIGHTS)
      outlooks.push(
        ...left({ kind: 'more-nights', nights }, times(information, 1 + nights / Math.max(1, have))),
      );
  if (tier !== 'metered') {
    for (const { test, heated } of heatedNights(fitted))
      outlooks.push(...left(test, sum(information, toldBy(fitted, heated)), priors, 'heated-night'));
    const last = fitted.nights.nights.findLast(({ window }) => window !== null)?.window?.last ?? problem.to;
    const week = meteredWeek(problem, posterior.parameters, fitted.stage, Math.min(last, problem.to));
    if (week !== null)
      outlooks.push(
        ...left(
          { kind: 'metered-week' },
          toldBy(fitted, week),
          surer(fitted, 'sun', SUN_LOGGED_SD),
          'metered',
        ),
      );
  } else
    outlooks.push(
      ...left({ kind: 'metered-week' }, times(information, 1 + 7 / Math.max(7, spansOf(fitted)))),
    );
  for (const [key, kind, sd] of [
    ['loggers', 'loggers-side-by-side', SIDE_BY_SIDE],
    ['neighbour', 'logger-next-door', NEXT_DOOR],
    ['mass', 'capacity-known', LOOKED_AT],
  ] as const)
    if (matters(fitted, key) && sd < priors[sharedPlace(key, problem.stages.length)].sd)
      outlooks.push(...left({ kind }, information, surer(fitted, key, sd)));
  if (problem.surroundings.wind === null)
    outlooks.push(...left({ kind: 'wind-logged' }, sum(information, byWind(fitted))));
  return bestHeatedNight(outlooks);
}

/** The standard deviation that the leading figure would have; null where it would have none. */
function sdWith(
  { problem, posterior, stage, tier, madeUp, other, nights: { nights } }: Fitted,
  information: Matrix,
  priors: readonly Prior[],
  then: Tier,
  test: FurtherTest,
): number | null {
  const covariance = covarianceOf(information, priors);
  if (covariance === null) return null;
  const { variance } = logFigure({ ...posterior, covariance, information }, priors, (x) =>
    heatLossAt(problem, x, stage),
  );
  const sunLogged = problem.surroundings.sunLogged || (test.kind === 'metered-week' && tier !== 'metered');
  const own = networkSd(variance, { tier: then, sunLogged, madeUp });
  if (then !== 'loggers' || tier !== 'loggers' || other === null) return own;
  const capacity = test.kind === 'capacity-known' ? LOOKED_AT : other.capacity;
  const loggers =
    test.kind === 'loggers-side-by-side'
      ? (other.loggers * SIDE_BY_SIDE) / problem.priors[sharedPlace('loggers', problem.stages.length)].sd
      : other.loggers;
  const have = nights.filter(({ used }) => used).length;
  const more = test.kind === 'more-nights' ? test.nights : 0;
  const spread = other.nights * Math.sqrt(have / (have + more));
  return combinedSd(
    own,
    effectiveSd({ ...other, capacity, loggers, nights: spread }, madeUp),
    other.logApart,
  );
}

/** The strongest heater that keeps the house below what is bearable, for each duration. */
function heatedNights({ problem, posterior, stage, nights }: Fitted) {
  const cold = nights.nights.filter(({ used }) => used).toReversed();
  return DURATIONS.flatMap((duration) => {
    let best: { test: FurtherTest; heated: HeatedNight } | null = null;
    for (const power of POWERS) {
      const heated = onceIn(cold, (night) =>
        heatedNight(problem, posterior.parameters, stage, night, { power, duration }),
      );
      if (heated === null || heated.peak > WARMEST) break;
      best = { test: { kind: 'heated-night', power, duration, peak: heated.peak }, heated };
    }
    return best === null ? [] : [best];
  });
}

/** What the first night gives that gives anything. */
function onceIn<T>(nights: readonly JudgedNight[], of: (night: JudgedNight) => T | null): T | null {
  for (const night of nights) {
    const it = of(night);
    if (it !== null) return it;
  }
  return null;
}

/** Of several heated nights the one that leaves least doubt. */
function bestHeatedNight(outlooks: readonly Outlook[]): Outlook[] {
  const heated = outlooks.filter(({ test }) => test.kind === 'heated-night');
  const best = heated.toSorted((a, b) => a.logSd - b.logSd).at(0);
  return outlooks.filter((it) => it.test.kind !== 'heated-night' || it === best);
}

/** What an imagined test tells, by the places of all stages' parameters. */
function toldBy({ problem, stage }: Fitted, { problem: imagined, x }: Imagined): Matrix {
  const told = informationOf(imagined, x);
  const places = placesOf(stage, problem.stages.length);
  const count = problem.priors.length;
  const start = sharedPlace('start', problem.stages.length);
  // How warm the mass is when the test begins has nothing to do with how warm it was then.
  return Array.from({ length: count }, (_, i) =>
    Array.from({ length: count }, (__, j) => {
      const [a, b] = [places.indexOf(i), places.indexOf(j)];
      return a < 0 || b < 0 || i === start || j === start ? 0 : told[a][b];
    }),
  );
}

/** What the same nights would tell beyond what they do, had the wind been logged: of an invented, changeable wind. */
function byWind({ problem, posterior }: Fitted): Matrix {
  const { surroundings, grid } = problem;
  const wind = surroundings.inside.map((_, k) => {
    const days = timeAt(grid, k) / 86_400;
    return 1 + 0.5 * Math.sin((2 * Math.PI * days) / 3.3) + 0.25 * Math.sin(2 * Math.PI * days);
  });
  const around = { ...surroundings, wind };
  const windy = informationOf(
    { ...problem, surroundings: around, leakage: leakageOf(around) },
    posterior.parameters,
  );
  const calm = informationOf(problem, posterior.parameters);
  return sum(windy, times(calm, -1));
}

const surer = ({ problem }: Fitted, key: SharedKey, sd: number): readonly Prior[] =>
  problem.priors.map((prior, k) =>
    k === sharedPlace(key, problem.stages.length) ? { ...prior, sd } : prior,
  );

/** Whether a neighbour is there whom nobody logged; loggers and mass always matter. */
function matters({ problem }: Fitted, key: SharedKey): boolean {
  const { surroundings, stages } = problem;
  return (
    key !== 'neighbour' ||
    stages[0].model.elements.some(({ beyond }, e) => beyond === 'adjacent' && surroundings.logged[e] === null)
  );
}

const spansOf = ({ problem, stage }: Fitted): number =>
  problem.spans.filter((it) => it.stage === stage).length;

const times = (matrix: Matrix, factor: number): Matrix => matrix.map((row) => row.map((it) => it * factor));
const sum = (a: Matrix, b: Matrix): Matrix => a.map((row, i) => row.map((it, j) => it + b[i][j]));
