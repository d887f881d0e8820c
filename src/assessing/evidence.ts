/** What an assessment rests on and comes to, in SI. */

import type { Estimate, Tier } from '../assessment.ts';
import type {
  JudgedNight,
  LaterStarts,
  LeaveOneOut,
  Neighbour,
  NightsNote,
  PooledTimeConstant,
  RoomsCooling,
  StageNights,
} from '../cooling/index.ts';
import type { Design } from '../fabric/index.ts';
import type {
  Agreement,
  AnnualFigures,
  Candidate,
  Change,
  ChangeNote,
  Gap,
  NextStep,
  NightsToShow,
  StageNote,
  WhereToLook,
} from '../gap/index.ts';
import type {
  DoubtShares,
  ForetoldNight,
  HeatLossEstimate,
  HeatLossNote,
  SurfaceHint,
} from '../heatloss/index.ts';
import type { ApartNote, LeakageApart } from '../heatloss/network/leakageApart.ts';
import type { House } from '../house.ts';
import type { LogFinding } from '../logs/index.ts';
import type { FileAccount, FileStep, Gathered, RecordFinding } from '../record/index.ts';
import type { HouseRecord } from '../series/record.ts';

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
  /** What the house as drawn would have done in the last used nights; none where no network can be made of it. */
  readonly foretold: readonly ForetoldNight[];
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
