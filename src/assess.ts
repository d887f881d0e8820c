/** House + logs -> what they show: the one place that knows the whole way. */
import type { Estimate, Tier } from './assessment.ts';
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
  type Agreement,
  type AnnualFigures,
  agreementOf,
  borrow,
  type Candidate,
  type Change,
  type ChangeNote,
  type Conditions,
  candidatesOf,
  changeOf,
  compareStages,
  DEFAULT_ALLOWANCE,
  designedYear,
  disagreement,
  type Gap,
  gapOf,
  measuredYear,
  type NextStep,
  type NightsToShow,
  nextSteps,
  nightsToShow,
  notesOn,
  overlaps,
  plainDoubtWith,
  type StageNote,
  sizeUnknown,
  unknownNights,
  type WhereToLook,
  whereToLook,
  withoutShared,
} from './gap/index.ts';
import {
  capacityOverTau,
  type DoubtShares,
  type HeatLossEstimate,
  type HeatLossNote,
  headlineOf,
  heatBalance,
  heatThenCool,
  metersHeating,
  type NetworkResult,
  type NetworkStageResult,
  networkEstimates,
  type Outlook,
  type SurfaceHint,
  stateSpace,
  surfaceHints,
  windowsOf,
} from './heatloss/index.ts';
import type { ApartNote, LeakageApart } from './heatloss/network/leakageApart.ts';
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
  /** Of the house as drawn, for orientation; null without a design or the place's degree days. */
  readonly designedYear: AnnualFigures | null;
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
  /** Heated nights and metered days that gave no answer: why. */
  readonly unanswered: readonly HeatLossNote[];
  /** Which of them agree; null with fewer than two. */
  readonly agreement: Agreement | null;
  /** What loggers on surfaces tell of the elements under them. */
  readonly surfaces: readonly SurfaceHint[];
  /** Rooms, voids and surfaces that may be the weak spot, the likeliest first. */
  readonly whereToLook: WhereToLook;
  /** Where the doubt of the headline comes from; null where the network does not lead. */
  readonly doubts: DoubtShares | null;
  /** What goes with the air and what through the shell, or why that cannot be told; null without the network. */
  readonly apart: LeakageApart | null;
  readonly tier: Tier;
  readonly headline: HeatLossEstimate | null;
  /** Measured over designed; null without a design or a measured figure. */
  readonly gap: Gap | null;
  /** Tests that might settle an open verdict, the likeliest first; none where there is nothing to settle. */
  readonly candidates: readonly Candidate[];
  readonly next: readonly NextStep[];
  /** A year's heat and the cold day, for orientation; null without a figure or the place's degree days. */
  readonly annual: AnnualFigures | null;
  /** Nights that each side of a comparison would need, scattering as these do; null with fewer than two. */
  readonly nightsToShow: readonly NightsToShow[] | null;
  readonly notes: readonly (StageNote | NightsNote | HeatLossNote | ChangeNote | ApartNote)[];
}

export interface ComparisonEvidence {
  readonly before: string;
  readonly after: string;
  /** Null when nothing compares both sides; without a time constant on one of them by their heat losses alone. */
  readonly ratios: { readonly heatLossRatio: Estimate; readonly timeConstantRatio: Estimate | null } | null;
  /** What it comes to in watts, air and a year, and what could have been seen. */
  readonly change: Change;
  readonly notes: readonly (StageNote | ChangeNote)[];
}

export type Assessing =
  | { readonly kind: 'assessed'; readonly evidence: Evidence }
  | (Gathered & { kind: 'no record' });

/** What is about to be done; `done` of the same kind have been, of `of` in all. Whoever is told may throw, to end it. */
export type AssessStep =
  | ({ readonly kind: 'read' } & FileStep)
  | { readonly kind: 'nights' }
  | { readonly kind: 'stage'; readonly name: string; readonly done: number; readonly of: number }
  /** A round of the fit of the design's network to all stages; `of` at most, and seldom as many. */
  | { readonly kind: 'network'; readonly done: number; readonly of: number };

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
): Pick<
  Evidence,
  'design' | 'designedYear' | 'neighbour' | 'nights' | 'stages' | 'comparisons' | 'findings'
> {
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
    const rooms = roomsCooling(record, stage.nights, neighbour);
    const surfaces = surfaceHints(house, record, design, stage);
    const heatLossAsDrawn = design && drawnLike(house, design);
    return {
      stage,
      pooled,
      leaveOneOut: leaveOneNightOut(stage.nights, pooled),
      laterStarts: laterStarts(record, stage.nights, neighbour),
      rooms,
      doubts: null,
      apart: null,
      surfaces,
      whereToLook: whereToLook({
        house,
        record,
        design,
        heatLossAsDrawn,
        neighbour,
        stage,
        rooms,
        surfaces,
      }),
      ...estimatesOf({ stage, pooled, house, record, design, neighbour, differenceSd, nights }),
    };
  });
  const network = throughNetwork(house, record, design, neighbour, measured, (done, of) =>
    onStep({ kind: 'network', done, of }),
  );
  const stages = measured
    .map((own, s) => withNetwork(own, network?.stages[s] ?? null))
    .map((own, s, all) =>
      assessStage(withBorrowed(own, all), house, record, design, () => network?.outlooks(s) ?? []),
    );
  return {
    design,
    designedYear: design && designedYear(house, design),
    neighbour,
    nights,
    stages,
    comparisons: pairsOf(stages).map(([before, after]) =>
      compare(before, after, network?.ratio(stages.indexOf(before), stages.indexOf(after)) ?? null, {
        house,
        design,
        record,
        differenceSd,
      }),
    ),
    findings: [
      ...findings,
      ...sizeUnknown(house, design && drawnLike(house, design)),
      ...unknownNights(house, nights),
      ...overlaps(entries ?? []),
    ],
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
  | 'stage'
  | 'pooled'
  | 'leaveOneOut'
  | 'laterStarts'
  | 'rooms'
  | 'estimates'
  | 'unanswered'
  | 'surfaces'
  | 'whereToLook'
  | 'doubts'
  | 'apart'
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
  onRound: (done: number, of: number) => void,
): NetworkResult | null {
  const heatLossAsDrawn = design && drawnLike(house, design);
  const overlapping = measured.slice(1).some(({ stage }, i) => stage.from < measured[i].stage.to);
  if (design === null || heatLossAsDrawn === null || overlapping || house.conditions?.openToNeighbour)
    return null;
  const stages = measured.map(({ stage }) => stage);
  return networkEstimates({ house, design, record, stages, neighbour, heatLossAsDrawn, onRound });
}

const withNetwork = (own: Measured, network: NetworkStageResult | null): Measured =>
  network === null
    ? own
    : {
        ...own,
        estimates: [...network.estimates, ...own.estimates],
        doubts: network.doubts,
        apart: network.apart,
      };

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

/** @param outlooks what further tests would leave of the network's doubt */
function assessStage(
  measured: Measured,
  house: House,
  record: HouseRecord,
  design: Design | null,
  outlooks: () => readonly Outlook[],
): StageEvidence {
  const { stage, estimates } = measured;
  const used = stage.nights.filter((night) => night.used);
  const { tier, estimate: headline } = headlineOf(estimates);
  const finished = stage.complete && stage.missing.length === 0;
  const drawn = design && drawnLike(house, design);
  const contradiction = disagreement(estimates);
  const agree = contradiction === null;
  const gap =
    headline !== null && design !== null && drawn !== null && drawn > 0
      ? gapOf({ house, design, heatLoss: headline.heatLossCoefficient, drawn, finished, agree })
      : null;
  const narrower = gap?.verdict === 'undecided' && agree && leadsTheNetwork(headline);
  const candidates =
    narrower && gap !== null ? candidatesOf(outlooks(), gap.ratio, house.allowance ?? DEFAULT_ALLOWANCE) : [];
  const plan = measured.pooled && nightsToShow(plainDoubtWith(measured.pooled, measured.pooled));
  return {
    ...measured,
    annual: headline && measuredYear(house, design, { heatLoss: headline.heatLossCoefficient, finished }),
    nightsToShow: plan,
    agreement: agreementOf(estimates, conditionsOf(house, record, design)),
    tier,
    headline,
    gap,
    candidates,
    next: nextSteps(
      { tier, verdict: gap?.verdict ?? null, goodNights: used.length },
      design !== null,
      candidates,
    ),
    notes: [
      ...(house.conditions?.openToNeighbour ? [{ code: 'open-to-neighbour' } as const] : []),
      ...notesOn(stage, used, finished, record),
      ...notesOnNights(measured.leaveOneOut, measured.laterStarts, measured.rooms),
      ...(contradiction === null
        ? []
        : [{ code: 'methods-disagree', methods: contradiction.map(({ method }) => method) } as const]),
      ...measured.unanswered,
      ...(measured.apart?.kind === 'not told apart' ? [measured.apart.why] : []),
      ...(house.stages?.length === 1 ? [{ code: 'only-one-stage', plan: plan ?? [] } as const] : []),
      ...(gap !== null && drawn !== design?.heatLoss
        ? [{ code: 'compared-with-design-as-tested' } as const]
        : []),
    ],
  };
}

/** Only its doubt is taken apart, so that it is known what would narrow it. */
const leadsTheNetwork = (headline: HeatLossEstimate | null): boolean =>
  headline !== null && (headline.method === 'combined' || headline.method === 'network');

/** What of the house bears on whether its ways to the heat loss can agree. */
function conditionsOf(house: House, { rooms }: HouseRecord, design: Design | null): Conditions {
  const logged = rooms.some(({ place }) => place === 'adjacent');
  const stated = statedNeighbour(house) !== null;
  return {
    neighbour: (design?.toNeighbours ?? 0) === 0 ? null : logged ? 'logged' : stated ? 'stated' : 'not known',
    wetTradesWithinWeeks: house.conditions?.wetTradesWithinWeeks ?? null,
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

function estimatesOf(given: ToEstimate): Pick<StageEvidence, 'estimates' | 'unanswered'> {
  const { stage, pooled, house, record, design, nights } = given;
  const neighbourShare = given.neighbour?.weight ?? 0;
  if (house.conditions?.openToNeighbour) return { estimates: [], unanswered: [] };
  const constantGains = house.constantGainsW ?? 0;
  const heated = stage.nights
    .filter((night) => night.heated && !night.used && !leftOutByHand(night) && !notLogged(night))
    .map(({ night }) => night);
  const { estimate: twoSlopes, unanswered } = heatThenCool(
    { ...record, differenceSd: given.differenceSd },
    heated,
    constantGains,
    given.neighbour,
  );
  const balance = heatBalance({ house, design, record, stage, nights });
  const estimates = [
    balance.estimate,
    stateSpace(record, stage, {
      heatLossAsDrawn: design && drawnLike(house, design),
      heatCapacity: design?.heatCapacity ?? null,
      constantGains,
      neighbour: given.neighbour,
      place: house.location,
      windows: windowsOf(house.elements ?? []),
    }),
    twoSlopes,
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
  return { estimates, unanswered: [...balance.unanswered, ...unanswered] };
}

const notLogged = ({ reasons }: JudgedNight) => reasons.some(({ code }) => code === 'no-inside-readings');

const leftOutByHand = ({ reasons }: JudgedNight) => reasons.some(({ code }) => code === 'left-out-by-hand');

/** Each stage with the next; with three or more, the first with the last as well. */
function pairsOf(stages: readonly StageEvidence[]): (readonly [StageEvidence, StageEvidence])[] {
  const pairs = stages.slice(1).map((after, i) => [stages[i], after] as const);
  return stages.length > 2 ? [...pairs, [stages[0], stages[stages.length - 1]]] : pairs;
}

/** What a comparison rests on beside its stages. */
interface ToCompareWith {
  readonly house: House;
  readonly design: Design | null;
  readonly record: HouseRecord;
  readonly differenceSd: number;
}

/** @param joint the ratio by one network for both stages; the time constants' where there is none */
function compare(
  before: StageEvidence,
  after: StageEvidence,
  joint: Estimate | null,
  { differenceSd, ...known }: ToCompareWith,
): ComparisonEvidence {
  const sideOf = ({ stage, pooled }: StageEvidence) => ({ nights: stage.nights, pooled });
  const { shared, ...sides } = withoutShared(sideOf(before), sideOf(after), differenceSd);
  const plain =
    sides.before.pooled && sides.after.pooled && compareStages(sides.before.pooled, sides.after.pooled);
  const ratio = joint ?? plain?.heatLossRatio ?? null;
  const compared = ({ stage, headline }: StageEvidence) => ({
    stage,
    heatLoss: headline?.heatLossCoefficient ?? null,
  });
  const change = changeOf({
    ...known,
    before: { ...compared(before), ...sides.before },
    after: { ...compared(after), ...sides.after },
    ratio,
    joint: joint !== null,
  });
  const differing = [
    ...before.stage.missing.filter((name) => !after.stage.missing.includes(name)),
    ...after.stage.missing.filter((name) => !before.stage.missing.includes(name)),
  ];
  return {
    before: before.stage.name,
    after: after.stage.name,
    ratios: ratio && { heatLossRatio: ratio, timeConstantRatio: plain?.timeConstantRatio ?? null },
    change,
    notes: [
      differing.length > 0 ? { code: 'mass-may-differ', names: differing } : { code: 'same-mass-assumed' },
      ...(shared.length > 0 ? [{ code: 'shared-nights-left-out', dates: shared } as const] : []),
      ...change.notes,
    ],
  };
}
