/** What the design's network says of every stage: as fitted, by effective capacity, and both together. */
import type { Estimate, Tier } from '../../assessment.ts';
import { driverOf, type Neighbour, type StageNights } from '../../cooling/index.ts';
import type { Design } from '../../fabric/index.ts';
import type { House } from '../../house.ts';
import { logInterval } from '../../maths/logInterval.ts';
import { type Grid, indexAt } from '../../series/grid.ts';
import type { HouseRecord } from '../../series/record.ts';
import { dryingSd, stillDrying, type VapourExcess, vapourExcess } from '../drying.ts';
import type { HeatLossEstimate, HeatLossNote } from '../estimate.ts';
import { combinedSd, effectiveSd, networkSd, ratioSd } from './beyond.ts';
import { effectiveCapacity, type FittedNight } from './effectiveCapacity.ts';
import { fitNetwork } from './fit.ts';
import { hoursOf } from './hours.ts';
import { leakageOf } from './leakage.ts';
import { type LeakageApart, leakageApart } from './leakageApart.ts';
import { modelOf } from './model.ts';
import { type Outlook, outlooksOf } from './outlook.ts';
import { priorsOf } from './parameters.ts';
import { heatLossAt, type NetworkProblem } from './problem.ts';
import type { Span } from './spans.ts';
import { surroundingsOf } from './surroundings.ts';
import { type DoubtShares, type LogFigure, logFigure, sharesOf } from './uncertainty.ts';

export interface NetworkInput {
  readonly house: House;
  readonly design: Design;
  readonly record: HouseRecord;
  /** In the order of time, not overlapping. */
  readonly stages: readonly StageNights[];
  readonly neighbour: Neighbour | null;
  /** What the house as drawn loses with its vents as they were [W/K]. */
  readonly heatLossAsDrawn: number;
  /** Told before each round of the fit, of how many at most; it may throw, to end it. */
  onRound(done: number, of: number): void;
}

export interface NetworkStageResult {
  readonly estimates: readonly HeatLossEstimate[];
  /** Where the doubt of the one that leads comes from; null without any. */
  readonly doubts: DoubtShares | null;
  /** What goes with the air and what through the shell; null where the stage has no figure. */
  readonly apart: LeakageApart | null;
}

export interface NetworkResult {
  readonly stages: readonly NetworkStageResult[];
  /** Heat loss of stage `after` over that of `before`, both by their places; null where one has no figure. */
  ratio(before: number, after: number): Estimate | null;
  /** What further tests would leave of a stage's doubt. It takes about as long as a fit. */
  outlooks(stage: number): readonly Outlook[];
}

/** Nights or days that it takes at least: one has no spread to judge by. */
const FEWEST_SPANS = 2;

/** Null where the network cannot be built or nothing tells of the house's loss. */
export function networkEstimates(input: NetworkInput): NetworkResult | null {
  const { house, design, record, stages } = input;
  const first = modelOf(house, design);
  if (first === null) return null;
  const { spans, metered, heatedDates } = hoursOf(record, stages, input.heatLossAsDrawn);
  if (spans.length < FEWEST_SPANS) return null;
  const surroundings = surroundingsOf(house, record, first);
  const constantGains = house.constantGainsW ?? 0;
  const vapour = stages.map((stage) => vapourExcess(record, stage, first.ventilation));
  const drying = dryingSd(house, vapour);
  const priors = priorsOf(first, surroundings, record, constantGains, stages.length, drying);
  const reach = reachOf(spans, record.grid);
  const problem: NetworkProblem = {
    grid: record.grid,
    surroundings,
    leakage: leakageOf(surroundings),
    stages: stages.map(({ from, missing }, s) => ({
      model: modelOf(house, design, missing) ?? first,
      from:
        s === 0
          ? reach.from
          : beginOf(spans, s, Math.max(reach.from, Math.min(reach.to, indexAt(record.grid, from)))),
    })),
    to: reach.to,
    spans,
    constantGains,
    metered,
    priors,
  };
  const posterior = fitNetwork(problem, input.onRound);
  if (posterior === null) return null;

  const tier: Tier = spans.some(({ kind }) => kind === 'metered')
    ? 'metered'
    : heatedDates.length > 0
      ? 'heated-night'
      : 'loggers';
  const nights = fittedNights(stages).filter(
    ({ first: from, last }) => from >= reach.from && last <= reach.to,
  );
  const effective = effectiveCapacity(problem, nights, driverOf(record, input.neighbour));
  const figures = stages.map((_, s) =>
    spans.some(({ stage }) => stage === s)
      ? logFigure(posterior, priors, (x) => heatLossAt(problem, x, s))
      : null,
  );
  const { capacitySd, layering } = first;
  const known = { tier, sunLogged: surroundings.sunLogged, madeUp: layering === 'made up' };
  // What nobody metered holds a night up as heat does; the network's own part of that doubt serves capacity too.
  const restsOn = ({ parts }: LogFigure, s: number) => ({
    capacity: capacitySd,
    loggers: record.differenceSd / Math.max(1, meanDifference(stages[s])),
    gains: Math.sqrt(parts.gains),
  });

  const stageResult = (figure: LogFigure | null, s: number): NetworkStageResult => {
    if (figure === null) return { estimates: [], doubts: null, apart: null };
    const notes = notesOf(input, spans, heatedDates, s, surroundings.wind !== null, vapour[s]);
    const ownSd = networkSd(figure.variance, known);
    const network: HeatLossEstimate = {
      method: 'network',
      tier,
      heatLossCoefficient: logInterval(Math.exp(figure.log), ownSd),
      notes,
    };
    const told = leakageApart(problem, posterior, network.heatLossCoefficient, s);
    const found = effective[s];
    if (found === null) return { estimates: [network], doubts: sharesOf(figure, ownSd ** 2), apart: told };
    const otherSd = effectiveSd(restsOn(figure, s), known.madeUp);
    const byCapacity: HeatLossEstimate = {
      method: 'effective-capacity',
      tier: 'loggers',
      heatLossCoefficient: logInterval(found, otherSd),
      notes: [{ code: 'rests-on-capacity', relativeSd: capacitySd }],
    };
    if (tier !== 'loggers')
      return { estimates: [network, byCapacity], doubts: sharesOf(figure, ownSd ** 2), apart: told };
    const apart = Math.log(found) - figure.log;
    const bothSd = combinedSd(ownSd, otherSd, apart);
    const combined: HeatLossEstimate = {
      method: 'combined',
      tier,
      heatLossCoefficient: logInterval(Math.exp(figure.log + apart / 2), bothSd),
      notes,
    };
    return { estimates: [combined, network, byCapacity], doubts: sharesOf(figure, bothSd ** 2), apart: told };
  };

  return {
    stages: figures.map(stageResult),
    ratio(before, after) {
      if (figures[before] === null || figures[after] === null) return null;
      const { log, variance } = logFigure(
        posterior,
        priors,
        (x) => heatLossAt(problem, x, after) / heatLossAt(problem, x, before),
      );
      const [a, b] = [effective[before], effective[after]];
      const ways = [log];
      if (a !== null && b !== null) ways.push(Math.log(b / a));
      const taus = [before, after].map((s) => meanLogTimeConstant(nights, s));
      const sameMass = String(stages[before].missing) === String(stages[after].missing);
      if (sameMass && taus.every((it) => it !== null)) ways.push((taus[0] ?? 0) - (taus[1] ?? 0));
      const mean = ways.reduce((sum, it) => sum + it, 0) / ways.length;
      return logInterval(Math.exp(mean), ratioSd(variance, ways, mean));
    },
    outlooks(s) {
      const figure = figures[s];
      if (figure === null) return [];
      const found = effective[s];
      const other = found === null ? null : { ...restsOn(figure, s), logApart: Math.log(found) - figure.log };
      return outlooksOf({
        problem,
        posterior,
        stage: s,
        nights: stages[s],
        tier,
        madeUp: known.madeUp,
        other,
      });
    },
  };
}

/** A stage's date begins at midnight, in the middle of the last night before it, which is still the earlier one's. */
const beginOf = (spans: readonly Span[], stage: number, from: number): number =>
  Math.max(
    from,
    ...spans.filter((span) => span.stage < stage).flatMap(({ blocks }) => blocks.map(({ to }) => to)),
  );

/** Before the first hours that count, the mass is given so long to come to know the weather [s]. */
const LEAD = 4 * 86_400;

/** What of the record is gone through: instants of the grid. */
function reachOf(spans: readonly Span[], grid: Grid): { readonly from: number; readonly to: number } {
  const blocks = spans.flatMap((span) => span.blocks);
  const first = Math.min(...blocks.map(({ from }) => from));
  return {
    from: Math.max(0, first - Math.round(LEAD / grid.step)),
    to: Math.max(...blocks.map(({ to }) => to)),
  };
}

function fittedNights(stages: readonly StageNights[]): FittedNight[] {
  return stages.flatMap(({ nights }, stage) =>
    nights.flatMap(({ used, window, fit }) =>
      used && window !== null && fit?.kind === 'fitted'
        ? [{ ...window, stage, timeConstant: fit.timeConstant.value }]
        : [],
    ),
  );
}

function meanLogTimeConstant(nights: readonly FittedNight[], stage: number): number | null {
  const own = nights.filter((night) => night.stage === stage);
  if (own.length === 0) return null;
  return own.reduce((sum, { timeConstant }) => sum + Math.log(timeConstant), 0) / own.length;
}

function meanDifference({ nights }: StageNights): number {
  const own = nights.flatMap(({ used, meanDifference: it }) => (used && it !== null ? [it] : []));
  return own.reduce((sum, it) => sum + it, 0) / Math.max(1, own.length);
}

function notesOf(
  { house, stages }: NetworkInput,
  spans: readonly Span[],
  heatedDates: readonly string[],
  s: number,
  windKnown: boolean,
  vapour: VapourExcess | null,
): HeatLossNote[] {
  const { conditions, constantGainsW = 0 } = house;
  const wet = stillDrying(house);
  const own = stages[s].nights.map(({ night }) => night.date);
  const heatedHere = heatedDates.filter((date) => own.includes(date));
  const known = spans.filter(({ kind }) => kind !== 'free').map(({ stage }) => stage);
  const lender = known.includes(s) ? undefined : stages[known[0]];
  const notes: (HeatLossNote | null)[] = [
    heatedHere.length > 0 ? { code: 'heated-nights-used', dates: heatedHere } : null,
    lender === undefined ? null : { code: 'calibrated-by-stage', stage: lender.name },
    constantGainsW > 0 ? { code: 'gains-allowed-for', gains: constantGainsW } : null,
    windKnown ? null : { code: 'no-wind' },
    wet ? { code: 'still-drying', weeks: conditions?.wetTradesWithinWeeks ?? 0 } : null,
    vapour !== null && (wet || vapour.unusual) ? { code: 'vapour-excess', ...vapour, told: wet } : null,
  ];
  return notes.filter((note) => note !== null);
}
