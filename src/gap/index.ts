export { disagreement } from './agreement.ts';
export { borrow } from './borrow.ts';
export { compareStages, type StageRatios } from './compare.ts';
export { type NextStep, nextSteps } from './next.ts';
export { notesOn, overlaps, unknownNights } from './notesOn.ts';
export type { StageNote } from './stageNotes.ts';
export { DEFAULT_ALLOWANCE, gapRatio, verdictOf } from './verdict.ts';
