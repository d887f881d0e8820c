/** House + logs -> what they show: the one place that knows the whole way. */
import type { Estimate, Tier, Verdict } from './assessment.ts';
import {
  type JudgedNight,
  judgeNights,
  type LaterStarts,
  type LeaveOneOut,
  laterStarts,
  leaveOneNightOut,
  type Neighbour,
  type NightsNote,
  nightsOfStage,
  notesOnNights,
  type PooledTimeConstant,
  poolTimeConstants,
  type RoomsCooling,
  roomsCooling,
  type StageNights,
} from './cooling/index.ts';
import { type Design, designOf, statedNeighbour } from './fabric/index.ts';
import {
  borrow,
  compareStages,
  disagreement,
  gapRatio,
  type NextStep,
  nextSteps,
  notesOn,
  overlaps,
  type StageNote,
  unknownNights,
  verdictOf,
} from './gap/index.ts';
import {
  capacityOverTau,
  type DoubtShares,
  type HeatLossEstimate,
  headlineOf,
  heatBalance,
  heatThenCool,
  metersHeating,
  type NetworkResult,
  type NetworkStageResult,
  networkEstimates,
} from './heatloss/index.ts';
import type { House } from './house.ts';
import type { LogFinding } from './logs/index.ts';
import { NORMAL_95 } from './maths/logInterval.ts';
import {
  type FileAccount,
  type FileRemark,
  type FileStep,
  type Gathered,
  gatherRecord,
  type RecordFinding,
} from './record/index.ts';
import { timeAt } from './series/grid.ts';
import type { HouseRecord } from './series/record.ts';
import { nightsBetween } from './sky/nights.ts';

/** Everything that an assessment rests on, in SI: what `report.ts` writes out and the pages draw. */
export interface Evidence {
  readonly house: House;
  readonly design: Design | null;
  readonly accounts: readonly FileAccount[];
  readonly record: HouseRecord;
  /** What the house cools towards beside outdoors; null without a heated neighbour whose temperature is known. */
  readonly neighbour: Neighbour | null;
  readonly nights: readonly JudgedNight[];
  readonly stages: readonly StageEvidence[];
  readonly comparisons: readonly ComparisonEvidence[];
  readonly findings: readonly (RecordFinding | LogFinding | StageNote)[];
}

export interface StageEvidence {
  readonly stage: StageNights;
  readonly pooled: PooledTimeConstant | null;
  /** Whether that hangs on one night, or on the hour at which one begins; null with too few or too short nights. */
  readonly leaveOneOut: LeaveOneOut | null;
  readonly laterStarts: LaterStarts | null;
  readonly rooms: RoomsCooling;
  readonly estimates: readonly HeatLossEstimate[];
  /** Where the doubt of the headline comes from; null where the network does not lead. */
  readonly doubts: DoubtShares | null;
  readonly tier: Tier;
  readonly headline: HeatLossEstimate | null;
  /** Measured over designed; null without a design or a measured figure. */
  readonly gap: { readonly ratio: Estimate; readonly verdict: Verdict | null } | null;
  readonly next: readonly NextStep[];
  readonly notes: readonly (StageNote | NightsNote)[];
}

export interface ComparisonEvidence {
  readonly before: string;
  readonly after: string;
  /** Null when nothing compares both sides; without a time constant on one of them by their heat losses alone. */
  readonly ratios: { readonly heatLossRatio: Estimate; readonly timeConstantRatio: Estimate | null } | null;
  readonly notes: readonly StageNote[];
}

export type Assessing =
  | { readonly kind: 'assessed'; readonly evidence: Evidence }
  | (Gathered & { kind: 'no record' });

/** What is about to be done; `done` of the same kind have been, of `of` in all. */
export type AssessStep =
  | ({ readonly kind: 'read' } & FileStep)
  | { readonly kind: 'nights' }
  | { readonly kind: 'stage'; readonly name: string; readonly done: number; readonly of: number };

/**
 * Assesses a house folder: the house as `house.json` has it, and the bytes of its files by their names.
 *
 * @param onStep  told of each step before it is taken
 * @param remarks what was met when the files were taken in
 */
export function assess(
  house: House,
  files: ReadonlyMap<string, Uint8Array>,
  onStep: (step: AssessStep) => void = () => {},
  remarks: ReadonlyMap<string, FileRemark> = new Map(),
): Assessing {
  const gathered = gatherRecord(house, files, {
    onFile: (step) => onStep({ kind: 'read', ...step }),
    remarks,
  });
  if (gathered.kind === 'no record') return gathered;
  const { record, accounts } = gathered;
  const shown = assessRecord(house, record, onStep);
  const findings = [...gathered.findings, ...shown.findings];
  return { kind: 'assessed', evidence: { house, accounts, record, ...shown, findings } };
}

/** What a record that was gathered shows, beside the house's design. */
export function assessRecord(
  house: House,
  gathered: HouseRecord,
  onStep: (step: AssessStep) => void = () => {},
): Pick<Evidence, 'design' | 'neighbour' | 'nights' | 'stages' | 'comparisons' | 'findings'> {
  const { location } = house;
  onStep({ kind: 'nights' });
  const design = designOf(house);
  const { record, findings } = withoutAppliances(gathered, design && drawnLike(house, design));
  const neighbour = neighbourOf(house, record, design);
  const differenceSd = drivingSd(house, record, neighbour);
  const end = timeAt(record.grid, record.grid.length - 1);
  const nights = judgeNights(
    record,
    nightsBetween(record.grid.start, end, location),
    house.nights,
    neighbour,
  );
  const entries = house.stages?.toSorted((a, b) => (a.from < b.from ? -1 : 1));
  const spans = entries?.map((entry) => nightsOfStage(entry, nights, record.grid, location.timeZone));
  const measured = (spans ?? [wholeRecord(record, nights)]).map((stage, done, { length: of }): Measured => {
    onStep({ kind: 'stage', name: stage.name, done, of });
    const pooled = poolTimeConstants(stage.nights, differenceSd);
    return {
      stage,
      pooled,
      leaveOneOut: leaveOneNightOut(stage.nights, pooled),
      laterStarts: laterStarts(record, stage.nights, neighbour),
      rooms: roomsCooling(record, stage.nights, neighbour),
      doubts: null,
      estimates: estimatesOf({ stage, pooled, house, record, design, neighbour, differenceSd, nights }),
    };
  });
  const network = throughNetwork(house, record, design, neighbour, measured);
  const stages = measured
    .map((own, s) => withNetwork(own, network?.stages[s] ?? null))
    .map((own, _, all) => assessStage(withBorrowed(own, all), house, record, design));
  return {
    design,
    neighbour,
    nights,
    stages,
    comparisons: pairsOf(stages).map(([before, after]) =>
      compare(before, after, network?.ratio(stages.indexOf(before), stages.indexOf(after)) ?? null),
    ),
    findings: [...findings, ...unknownNights(house, nights), ...overlaps(entries ?? [])],
  };
}

/** A meter of one appliance is no meter of the house's heat. */
function withoutAppliances(
  record: HouseRecord,
  heatLossAsDrawn: number | null,
): { readonly record: HouseRecord; readonly findings: readonly StageNote[] } {
  const { heatingPower } = record;
  if (heatingPower === null || heatLossAsDrawn === null || metersHeating(record, heatLossAsDrawn))
    return { record, findings: [] };
  const switched = heatingPower.some((power) => power > 0);
  return {
    record: { ...record, heatingPower: null },
    findings: switched ? [{ code: 'meter-not-of-heating', where: { key: 'heat' } }] : [],
  };
}

/**
 * A heated neighbour by its share of all losses as drawn. Null without one, where a wall to it has no transmittance,
 * and where nobody tells how warm it is: then it is as if it were as warm as the house.
 */
function neighbourOf(house: House, { rooms }: HouseRecord, design: Design | null): Neighbour | null {
  const toOutside = design && drawnLike(house, design);
  const toNeighbours = design?.toNeighbours ?? 0;
  if (toOutside === null || toNeighbours === 0) return null;
  const temperature = statedNeighbour(house)?.temperature ?? null;
  if (temperature === null && !rooms.some(({ place }) => place === 'adjacent')) return null;
  return { weight: toNeighbours / (toNeighbours + toOutside), temperature };
}

/** What the loggers, and a neighbour's temperature as stated, may be off in what drives the fall; one sd [K]. */
function drivingSd(house: House, { rooms, differenceSd }: HouseRecord, neighbour: Neighbour | null): number {
  const stated = statedNeighbour(house);
  if (neighbour === null || stated === null || rooms.some(({ place }) => place === 'adjacent'))
    return differenceSd;
  return Math.hypot(differenceSd, (neighbour.weight * stated.plusMinus) / NORMAL_95);
}

const wholeRecord = ({ grid }: HouseRecord, nights: readonly JudgedNight[]): StageNights => ({
  name: 'Whole record',
  from: grid.start,
  to: timeAt(grid, grid.length - 1),
  complete: true,
  missing: [],
  nights,
  crossing: [],
});

/** A stage with what its own readings give. */
type Measured = Pick<
  StageEvidence,
  'stage' | 'pooled' | 'leaveOneOut' | 'laterStarts' | 'rooms' | 'estimates' | 'doubts'
>;

/**
 * The design's network fitted to all stages at once. Null without a design that has a heat loss, where stages
 * overlap, and where a door stands open to the house next door: what goes through it is nobody's transmittance.
 */
function throughNetwork(
  house: House,
  record: HouseRecord,
  design: Design | null,
  neighbour: Neighbour | null,
  measured: readonly Measured[],
): NetworkResult | null {
  const heatLossAsDrawn = design && drawnLike(house, design);
  const overlapping = measured.slice(1).some(({ stage }, i) => stage.from < measured[i].stage.to);
  if (design === null || heatLossAsDrawn === null || overlapping || house.conditions?.openToNeighbour)
    return null;
  const stages = measured.map(({ stage }) => stage);
  return networkEstimates({ house, design, record, stages, neighbour, heatLossAsDrawn });
}

const withNetwork = (own: Measured, network: NetworkStageResult | null): Measured =>
  network === null
    ? own
    : { ...own, estimates: [...network.estimates, ...own.estimates], doubts: network.doubts };

/** A stage without metered heat takes the watts of the nearest stage that has it, if the mass is the same. */
function withBorrowed(own: Measured, all: readonly Measured[]): Measured {
  const { pooled } = own;
  if (pooled === null || meteredOf(own) !== undefined) return own;
  const distance = (other: Measured) => Math.abs(all.indexOf(other) - all.indexOf(own));
  const lenders = all.flatMap((other) => {
    const metered = meteredOf(other);
    if (metered === undefined || other.pooled === null || !sameElements(own.stage, other.stage)) return [];
    return [{ other, metered, ratio: compareStages(other.pooled, pooled).heatLossRatio }];
  });
  if (lenders.length === 0) return own;
  const [{ other, metered, ratio }] = lenders.toSorted((a, b) => distance(a.other) - distance(b.other));
  return { ...own, estimates: [borrow(metered, other.stage.name, ratio), ...own.estimates] };
}

const meteredOf = ({ estimates }: Measured) =>
  estimates.find(({ tier }) => tier === 'metered' || tier === 'heated-night');

const sameElements = (a: StageNights, b: StageNights) =>
  a.missing.length === b.missing.length && a.missing.every((name) => b.missing.includes(name));

function assessStage(
  measured: Measured,
  house: House,
  record: HouseRecord,
  design: Design | null,
): StageEvidence {
  const { stage, estimates } = measured;
  const used = stage.nights.filter((night) => night.used);
  const { tier, estimate: headline } = headlineOf(estimates);
  const finished = stage.complete && stage.missing.length === 0;
  const drawn = design && drawnLike(house, design);
  const contradiction = disagreement(estimates);
  const ratio =
    headline !== null && drawn !== null && drawn > 0 ? gapRatio(headline.heatLossCoefficient, drawn) : null;
  const verdict =
    ratio === null || !finished
      ? null
      : contradiction === null
        ? verdictOf(ratio, house.allowance)
        : 'undecided';
  return {
    ...measured,
    tier,
    headline,
    gap: ratio === null ? null : { ratio, verdict },
    next: nextSteps({ tier, verdict, goodNights: used.length }, design !== null),
    notes: [
      ...(house.conditions?.openToNeighbour ? [{ code: 'open-to-neighbour' } as const] : []),
      ...notesOn(stage, used, finished, record),
      ...notesOnNights(measured.leaveOneOut, measured.laterStarts, measured.rooms),
      ...(contradiction === null
        ? []
        : [{ code: 'methods-disagree', methods: contradiction.map(({ method }) => method) } as const]),
      ...(ratio !== null && drawn !== design?.heatLoss
        ? [{ code: 'compared-with-design-as-tested' } as const]
        : []),
    ],
  };
}

/** What the measured figure is set beside: as tested, unless the vents were open [W/K]; null without either. */
const drawnLike = ({ conditions }: House, { heatLoss, heatLossAsTested }: Design): number | null =>
  conditions?.ventsClosed === false ? heatLoss : (heatLossAsTested ?? heatLoss);

interface ToEstimate {
  readonly stage: StageNights;
  readonly pooled: PooledTimeConstant | null;
  readonly house: House;
  readonly record: HouseRecord;
  readonly design: Design | null;
  readonly neighbour: Neighbour | null;
  readonly differenceSd: number;
  /** Of all stages. */
  readonly nights: readonly JudgedNight[];
}

function estimatesOf(given: ToEstimate): HeatLossEstimate[] {
  const { stage, pooled, house, record, design, nights } = given;
  const neighbourShare = given.neighbour?.weight ?? 0;
  if (house.conditions?.openToNeighbour) return [];
  const constantGains = house.constantGainsW ?? 0;
  const dawns = nights
    .map(({ night }) => night.sunrise)
    .filter((dawn) => dawn >= stage.from && dawn <= stage.to);
  const heated = stage.nights
    .filter((night) => night.heated && !night.used && !leftOutByHand(night))
    .map(({ night }) => night);
  return [
    heatBalance(record, dawns, design?.heatCapacity ?? null, constantGains),
    heatThenCool(record, heated, constantGains),
    pooled !== null &&
    design !== null &&
    design.heatCapacity !== null &&
    design.heatCapacitySd !== null &&
    neighbourShare < 1
      ? capacityOverTau({
          heatCapacity: design.heatCapacity,
          heatCapacitySd: design.heatCapacitySd,
          timeConstant: pooled.timeConstant.value,
          logSe: pooled.logSe,
          degreesOfFreedom: pooled.degreesOfFreedom,
          constantGains,
          meanDifference: pooled.meanDifference,
          differenceSd: given.differenceSd,
          neighbourShare,
        })
      : null,
  ].filter((estimate) => estimate !== null);
}

const leftOutByHand = ({ reasons }: JudgedNight) => reasons.some(({ code }) => code === 'left-out-by-hand');

/** Each stage with the next; with three or more, the first with the last as well. */
function pairsOf(stages: readonly StageEvidence[]): (readonly [StageEvidence, StageEvidence])[] {
  const pairs = stages.slice(1).map((after, i) => [stages[i], after] as const);
  return stages.length > 2 ? [...pairs, [stages[0], stages[stages.length - 1]]] : pairs;
}

/** @param joint the ratio by one network for both stages; the time constants' where there is none */
function compare(before: StageEvidence, after: StageEvidence, joint: Estimate | null): ComparisonEvidence {
  const plain = before.pooled && after.pooled && compareStages(before.pooled, after.pooled);
  const heatLossRatio = joint ?? plain?.heatLossRatio ?? null;
  const differing = [
    ...before.stage.missing.filter((name) => !after.stage.missing.includes(name)),
    ...after.stage.missing.filter((name) => !before.stage.missing.includes(name)),
  ];
  return {
    before: before.stage.name,
    after: after.stage.name,
    ratios: heatLossRatio && { heatLossRatio, timeConstantRatio: plain?.timeConstantRatio ?? null },
    notes: [
      differing.length > 0 ? { code: 'mass-may-differ', names: differing } : { code: 'same-mass-assumed' },
    ],
  };
}
