/** What the design's network says of every stage: as fitted, by effective capacity, and both together. */
import type { Estimate, Tier } from '../../assessment.ts';
import { driverOf, missingFromOne, type Neighbour, type StageNights } from '../../cooling/index.ts';
import type { Design } from '../../fabric/index.ts';
import type { House } from '../../house.ts';
import { logInterval } from '../../maths/logInterval.ts';
import { type Grid, indexAt } from '../../series/grid.ts';
import type { HouseRecord } from '../../series/record.ts';
import { airFlowOf } from '../airFlow.ts';
import { differenceOver, dryingNotes, gainsNotes } from '../conditionNotes.ts';
import { dryingSd, type VapourExcess, vapourExcess } from '../drying.ts';
import type { HeatLossEstimate, HeatLossNote } from '../estimate.ts';
import {
  combinedSd,
  type EffectiveRestsOn,
  effectiveSd,
  networkSd,
  nightsTellLittle,
  ratioSd,
} from './beyond.ts';
import { effectiveCapacity } from './effectiveCapacity.ts';
import { fitNetwork } from './fit.ts';
import { fittedNights, meanLogTimeConstant, meanLogTimeConstantSd } from './fittedNights.ts';
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
  const vapour = stages.map((stage) => vapourExcess(record, stage, airFlowOf(house, design)));
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
  const nightsSds = stages.map((_, s) => meanLogTimeConstantSd(nights, s));
  const effective = effectiveCapacity(problem, nights, driverOf(record, input.neighbour)).map((found, s) =>
    nightsSds[s] === null ? null : found,
  );
  const figures = stages.map((_, s) =>
    spans.some(({ stage }) => stage === s)
      ? logFigure(posterior, priors, (x) => heatLossAt(problem, x, s))
      : null,
  );
  const { capacitySd, layering } = first;
  const known = { tier, sunLogged: surroundings.sunLogged, madeUp: layering === 'made up' };
  // What nobody metered holds a night up as heat does; the network's own part of that doubt serves capacity too.
  const restsOn = ({ parts }: LogFigure, s: number): EffectiveRestsOn => ({
    capacity: capacitySd,
    loggers: record.differenceSd / Math.max(1, meanDifference(stages[s])),
    gains: Math.sqrt(parts.gains),
    nights: nightsSds[s] ?? Number.POSITIVE_INFINITY,
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
    const rests = restsOn(figure, s);
    const otherSd = effectiveSd(rests, known.madeUp);
    const byCapacity: HeatLossEstimate = {
      method: 'effective-capacity',
      tier: 'loggers',
      heatLossCoefficient: logInterval(found, otherSd),
      notes: [{ code: 'rests-on-capacity', relativeSd: capacitySd }],
    };
    if (tier !== 'loggers' || nightsTellLittle(rests, known.madeUp))
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
      const sameMass = missingFromOne(stages[before], stages[after]).length === 0;
      if (sameMass && taus.every((it) => it !== null)) ways.push((taus[0] ?? 0) - (taus[1] ?? 0));
      const mean = ways.reduce((sum, it) => sum + it, 0) / ways.length;
      return logInterval(Math.exp(mean), ratioSd(variance, ways, mean));
    },
    outlooks(s) {
      const figure = figures[s];
      if (figure === null) return [];
      const found = effective[s];
      const rests = restsOn(figure, s);
      const other =
        found === null || nightsTellLittle(rests, known.madeUp)
          ? null
          : { ...rests, logApart: Math.log(found) - figure.log };
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

function meanDifference({ nights }: StageNights): number {
  const own = nights.flatMap(({ used, meanDifference: it }) => (used && it !== null ? [it] : []));
  return own.reduce((sum, it) => sum + it, 0) / Math.max(1, own.length);
}

function notesOf(
  { house, record, stages, heatLossAsDrawn }: NetworkInput,
  spans: readonly Span[],
  heatedDates: readonly string[],
  s: number,
  windKnown: boolean,
  vapour: VapourExcess | null,
): HeatLossNote[] {
  const { constantGainsW = 0 } = house;
  const own = stages[s].nights.map(({ night }) => night.date);
  const heatedHere = heatedDates.filter((date) => own.includes(date));
  const known = spans.filter(({ kind }) => kind !== 'free').map(({ stage }) => stage);
  const lender = known.includes(s) ? undefined : stages[known[0]];
  const notes: (HeatLossNote | null)[] = [
    heatedHere.length > 0 ? { code: 'heated-nights-used', dates: heatedHere } : null,
    lender === undefined ? null : { code: 'calibrated-by-stage', stage: lender.name },
    constantGainsW > 0 ? { code: 'gains-allowed-for', gains: constantGainsW } : null,
    windKnown ? null : { code: 'no-wind' },
    ...gainsNotes(house, heatLossAsDrawn, differenceOver(record, stages[s], house)),
    ...dryingNotes(house, vapour),
  ];
  return notes.filter((note) => note !== null);
}
