/** What the design's network says of every stage: as fitted, by effective capacity, and both together. */
import type { Estimate, Tier } from '../../assessment.ts';
import { driverOf, type Neighbour, type StageNights } from '../../cooling/index.ts';
import type { Design } from '../../fabric/index.ts';
import type { House } from '../../house.ts';
import { logInterval } from '../../maths/logInterval.ts';
import { type Grid, indexAt } from '../../series/grid.ts';
import type { HouseRecord } from '../../series/record.ts';
import type { HeatLossEstimate, HeatLossNote } from '../estimate.ts';
import { effectiveCapacity, type FittedNight } from './effectiveCapacity.ts';
import { fitNetwork } from './fit.ts';
import { hoursOf } from './hours.ts';
import { modelOf } from './model.ts';
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
}

export interface NetworkStageResult {
  readonly estimates: readonly HeatLossEstimate[];
  /** Where the doubt of the one that leads comes from; null without any. */
  readonly doubts: DoubtShares | null;
}

export interface NetworkResult {
  readonly stages: readonly NetworkStageResult[];
  /** Heat loss of stage `after` over that of `before`, both by their places; null where one has no figure. */
  ratio(before: number, after: number): Estimate | null;
}

/**
 * Standard deviations of logarithms beyond what the posterior knows, so that intervals hold on the tuning seeds of
 * the proving ground (`npm run prove -- --seeds tuning`): the network is one room, has one film and one leak.
 */
const BEYOND = {
  loggers: 0.03,
  'heated-night': 0.045,
  metered: 0.05,
  /** Nobody logged the sun. */
  meteredInTheDark: 0.09,
  /** Layers made up. */
  madeUp: 0.15,
  /** Of effective capacity: everything that its network takes as believed. */
  effective: 0.11,
  /** Of a ratio, and for each unit of its logarithm. */
  ratio: 0.045,
  ratioPerLog: 0.1,
} as const;
/** Ways to a ratio share nights and loggers: their mean is surer than one, less than three would be. */
const RATIO_OF_POSTERIOR = 0.6;
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
  const priors = priorsOf(first, surroundings, record, constantGains, stages.length, house.conditions);
  const reach = reachOf(spans, record.grid);
  const problem: NetworkProblem = {
    grid: record.grid,
    surroundings,
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
  const posterior = fitNetwork(problem);
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
  const madeUp = layering === 'made up' ? BEYOND.madeUp : 0;
  const beyond = tier === 'metered' && !surroundings.sunLogged ? BEYOND.meteredInTheDark : BEYOND[tier];
  const loggersSd = (s: number) => record.differenceSd / Math.max(1, meanDifference(stages[s]));

  const stageResult = (figure: LogFigure | null, s: number): NetworkStageResult => {
    if (figure === null) return { estimates: [], doubts: null };
    const notes = notesOf(input, spans, heatedDates, s, surroundings.wind !== null);
    const ownSd = Math.hypot(
      Math.sqrt(figure.variance),
      beyond,
      tier === 'metered' ? 0 : madeUp / (tier === 'loggers' ? 1 : 2),
    );
    const network: HeatLossEstimate = {
      method: 'network',
      tier,
      heatLossCoefficient: logInterval(Math.exp(figure.log), ownSd),
      notes,
    };
    const found = effective[s];
    if (found === null) return { estimates: [network], doubts: sharesOf(figure, ownSd ** 2) };
    // What nobody metered holds a night up as heat does; the network's own part of that doubt serves here too.
    const gainsSd = Math.sqrt(figure.parts.gains);
    const effectiveSd = Math.hypot(capacitySd, BEYOND.effective, madeUp, loggersSd(s), gainsSd);
    const byCapacity: HeatLossEstimate = {
      method: 'effective-capacity',
      tier: 'loggers',
      heatLossCoefficient: logInterval(found, effectiveSd),
      notes: [{ code: 'rests-on-capacity', relativeSd: capacitySd }],
    };
    if (tier !== 'loggers') return { estimates: [network, byCapacity], doubts: sharesOf(figure, ownSd ** 2) };
    const apart = Math.log(found) - figure.log;
    const bothSd = Math.hypot(Math.min(ownSd, effectiveSd), apart / 4);
    const combined: HeatLossEstimate = {
      method: 'combined',
      tier,
      heatLossCoefficient: logInterval(Math.exp(figure.log + apart / 2), bothSd),
      notes,
    };
    return { estimates: [combined, network, byCapacity], doubts: sharesOf(figure, bothSd ** 2) };
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
      const share = ways.length > 1 ? RATIO_OF_POSTERIOR : 1;
      const spread = (Math.max(...ways) - Math.min(...ways)) / 4;
      const sd = Math.hypot(share * Math.sqrt(variance), BEYOND.ratio, BEYOND.ratioPerLog * mean, spread);
      return logInterval(Math.exp(mean), sd);
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
): HeatLossNote[] {
  const { conditions, constantGainsW = 0 } = house;
  const own = stages[s].nights.map(({ night }) => night.date);
  const heatedHere = heatedDates.filter((date) => own.includes(date));
  const known = spans.filter(({ kind }) => kind !== 'free').map(({ stage }) => stage);
  const lender = known.includes(s) ? undefined : stages[known[0]];
  const notes: (HeatLossNote | null)[] = [
    heatedHere.length > 0 ? { code: 'heated-nights-used', dates: heatedHere } : null,
    lender === undefined ? null : { code: 'calibrated-by-stage', stage: lender.name },
    constantGainsW > 0 ? { code: 'gains-allowed-for', gains: constantGainsW } : null,
    windKnown ? null : { code: 'no-wind' },
    conditions?.wetTradesWithinWeeks !== undefined && conditions.wetTradesWithinWeeks <= 8
      ? { code: 'still-drying', weeks: conditions.wetTradesWithinWeeks }
      : null,
  ];
  return notes.filter((note) => note !== null);
}
