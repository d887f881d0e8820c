/** House + logs -> what they show: the one place that knows the whole way. */
import type { Estimate, Tier, Verdict } from './assessment.ts';
import {
  type JudgedNight,
  judgeNights,
  nightsOfStage,
  type PooledTimeConstant,
  poolTimeConstants,
  type StageNights,
} from './cooling/index.ts';
import { type Design, designOf } from './fabric/index.ts';
import {
  borrow,
  compareStages,
  disagreement,
  gapRatio,
  type NextStep,
  nextSteps,
  type StageNote,
  type StageRatios,
  verdictOf,
} from './gap/index.ts';
import {
  capacityOverTau,
  type HeatLossEstimate,
  headlineOf,
  heatBalance,
  heatThenCool,
} from './heatloss/index.ts';
import type { House, StageEntry } from './house.ts';
import type { LogFinding } from './logs/index.ts';
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
  readonly nights: readonly JudgedNight[];
  readonly stages: readonly StageEvidence[];
  readonly comparisons: readonly ComparisonEvidence[];
  readonly findings: readonly (RecordFinding | LogFinding | StageNote)[];
}

export interface StageEvidence {
  readonly stage: StageNights;
  readonly pooled: PooledTimeConstant | null;
  readonly estimates: readonly HeatLossEstimate[];
  readonly tier: Tier;
  readonly headline: HeatLossEstimate | null;
  /** Measured over designed; null without a design or a measured figure. */
  readonly gap: { readonly ratio: Estimate; readonly verdict: Verdict | null } | null;
  readonly next: readonly NextStep[];
  readonly notes: readonly StageNote[];
}

export interface ComparisonEvidence {
  readonly before: string;
  readonly after: string;
  /** Null when one side has no time constant. */
  readonly ratios: StageRatios | null;
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
  const { location } = house;

  onStep({ kind: 'nights' });
  const design = designOf(house);
  const end = timeAt(record.grid, record.grid.length - 1);
  const nights = judgeNights(record, nightsBetween(record.grid.start, end, location), house.nights);
  const entries = house.stages?.toSorted((a, b) => (a.from < b.from ? -1 : 1));
  const spans = entries?.map((entry) => nightsOfStage(entry, nights, record.grid, location.timeZone));
  const measured = (spans ?? [wholeRecord(record, nights)]).map((stage, done, { length: of }): Measured => {
    onStep({ kind: 'stage', name: stage.name, done, of });
    const pooled = poolTimeConstants(stage.nights, record.differenceSd);
    return { stage, pooled, estimates: estimatesOf(stage, pooled, house, record, design, nights) };
  });
  const stages = measured.map((own) => assessStage(withBorrowed(own, measured), house, record, design));
  return {
    kind: 'assessed',
    evidence: {
      house,
      design,
      accounts,
      record,
      nights,
      stages,
      comparisons: pairsOf(stages).map(([before, after]) => compare(before, after)),
      findings: [...gathered.findings, ...unknownNights(house, nights), ...overlaps(entries ?? [])],
    },
  };
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
type Measured = Pick<StageEvidence, 'stage' | 'pooled' | 'estimates'>;

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

const meteredOf = ({ estimates }: Measured) => estimates.find(({ method }) => method !== 'capacity-over-tau');

const sameElements = (a: StageNights, b: StageNights) =>
  a.missing.length === b.missing.length && a.missing.every((name) => b.missing.includes(name));

function assessStage(
  { stage, pooled, estimates }: Measured,
  house: House,
  record: HouseRecord,
  design: Design | null,
): StageEvidence {
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
    stage,
    pooled,
    estimates,
    tier,
    headline,
    gap: ratio === null ? null : { ratio, verdict },
    next: nextSteps({ tier, verdict, goodNights: used.length }, design !== null),
    notes: [
      ...notesOn(stage, used, finished, record),
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

function estimatesOf(
  stage: StageNights,
  pooled: PooledTimeConstant | null,
  house: House,
  record: HouseRecord,
  design: Design | null,
  allNights: readonly JudgedNight[],
): HeatLossEstimate[] {
  const constantGains = house.constantGainsW ?? 0;
  const dawns = allNights
    .map(({ night }) => night.sunrise)
    .filter((dawn) => dawn >= stage.from && dawn <= stage.to);
  const heated = stage.nights
    .filter((night) => night.heated && !night.used && !leftOutByHand(night))
    .map(({ night }) => night);
  return [
    heatBalance(record, dawns, design?.heatCapacity ?? null, constantGains),
    heatThenCool(record, heated, constantGains),
    pooled !== null && design !== null && design.heatCapacity !== null && design.heatCapacitySd !== null
      ? capacityOverTau({
          heatCapacity: design.heatCapacity,
          heatCapacitySd: design.heatCapacitySd,
          timeConstant: pooled.timeConstant.value,
          logSe: pooled.logSe,
          degreesOfFreedom: pooled.degreesOfFreedom,
          constantGains,
          meanDifference: pooled.meanDifference,
          differenceSd: record.differenceSd,
        })
      : null,
  ].filter((estimate) => estimate !== null);
}

const leftOutByHand = ({ reasons }: JudgedNight) => reasons.some(({ code }) => code === 'left-out-by-hand');

function notesOn(
  stage: StageNights,
  used: readonly JudgedNight[],
  finished: boolean,
  { grid }: HouseRecord,
): StageNote[] {
  const handPicked = stage.nights.filter(({ reasons }) =>
    reasons.some(({ code }) => code.endsWith('by-hand')),
  );
  const outside = stage.to < grid.start || stage.from > timeAt(grid, grid.length - 1);
  const notes: (StageNote | null)[] = [
    outside ? { code: 'stage-outside-record' } : null,
    !outside && stage.nights.length === 0 ? { code: 'no-night-in-stage' } : null,
    used.length < 2 ? { code: 'too-few-nights', used: used.length } : null,
    stage.crossing.length > 0 ? { code: 'night-crosses-stage', dates: stage.crossing } : null,
    handPicked.length > 0 ? { code: 'hand-picked', dates: handPicked.map(({ night }) => night.date) } : null,
    finished ? null : { code: 'stage-not-complete', missing: stage.missing },
  ];
  return notes.filter((note) => note !== null);
}

/** Each stage with the next; with three or more, the first with the last as well. */
function pairsOf(stages: readonly StageEvidence[]): (readonly [StageEvidence, StageEvidence])[] {
  const pairs = stages.slice(1).map((after, i) => [stages[i], after] as const);
  return stages.length > 2 ? [...pairs, [stages[0], stages[stages.length - 1]]] : pairs;
}

function compare(before: StageEvidence, after: StageEvidence): ComparisonEvidence {
  const differing = [
    ...before.stage.missing.filter((name) => !after.stage.missing.includes(name)),
    ...after.stage.missing.filter((name) => !before.stage.missing.includes(name)),
  ];
  return {
    before: before.stage.name,
    after: after.stage.name,
    ratios: before.pooled && after.pooled && compareStages(before.pooled, after.pooled),
    notes: [
      differing.length > 0 ? { code: 'mass-may-differ', names: differing } : { code: 'same-mass-assumed' },
    ],
  };
}

function unknownNights(house: House, nights: readonly JudgedNight[]): StageNote[] {
  const dates = new Set(nights.map(({ night }) => night.date));
  return (house.nights ?? []).flatMap(({ date }, i) =>
    dates.has(date) ? [] : [{ code: 'no-such-night', date, where: { key: `nights[${i}]` } } as const],
  );
}

function overlaps(stages: readonly StageEntry[]): StageNote[] {
  return stages
    .slice(1)
    .flatMap((stage, i) =>
      stage.from < stages[i].to
        ? [{ code: 'stages-overlap', names: [stages[i].name, stage.name] } as const]
        : [],
    );
}
