export { type Agreement, type AgreementNote, type Apart, agreementOf, disagreement } from './agreement.ts';
export { type AnnualFigures, designedYear, measuredYear } from './annual.ts';
export { borrow } from './borrow.ts';
export type { Cause, Conditions } from './causes.ts';
export { type Change, type ComparedSide, changeOf } from './change/change.ts';
export { type NightsToShow, nightsToShow, plainDoubtWith } from './change/detectable.ts';
export type { AnnualNote, ChangeNote } from './change/notes.ts';
export { withoutShared } from './change/shared.ts';
export type { StageWeather } from './change/weather.ts';
export { compareStages, type StageRatios } from './compare.ts';
export { type Candidate, candidatesOf } from './decide.ts';
export { type Gap, gapOf } from './gap.ts';
export type { GapNote } from './gapNotes.ts';
export type { ElementGap } from './inElements.ts';
export { type Bar, type NextStep, nextSteps } from './next.ts';
export { notesOn, overlaps, sizeUnknown, unknownNights } from './notesOn.ts';
export type { Source } from './sources.ts';
export type { StageNote } from './stageNotes.ts';
export { DEFAULT_ALLOWANCE, gapRatio, verdictOf } from './verdict.ts';
export {
  type Look,
  type LookNote,
  type LooksNote,
  type WhereToLook,
  whereToLook,
} from './whereToLook/index.ts';
export type { Bare } from './withoutInsulation.ts';
