/** What is to be said of a stage or of a comparison beside its figures: codes; the sentences are in `words/`. */
import type { Method, Where } from '../assessment.ts';

export type StageNote = { readonly where?: Where } & (
  | { readonly code: 'night-crosses-stage'; readonly dates: readonly string[] }
  | { readonly code: 'no-night-in-stage' }
  | { readonly code: 'too-few-nights'; readonly used: number }
  | { readonly code: 'hand-picked'; readonly dates: readonly string[] }
  | { readonly code: 'stage-not-complete'; readonly missing: readonly string[] }
  | { readonly code: 'stages-overlap'; readonly names: readonly string[] }
  | { readonly code: 'stage-outside-record' }
  | { readonly code: 'compared-with-design-as-tested' }
  /** Intervals that do not meet. */
  | { readonly code: 'methods-disagree'; readonly methods: readonly Method[] }
  | { readonly code: 'same-mass-assumed' }
  | { readonly code: 'mass-may-differ'; readonly names: readonly string[] }
  /** A door or hatch stands open to a heated house: what goes through it is in no figure. */
  | { readonly code: 'open-to-neighbour' }
  /** A ratio that holds what goes through an open door to a heated house as well. */
  | { readonly code: 'ratio-with-open-door' }
  /** What was metered is one appliance's. */
  | { readonly code: 'meter-not-of-heating' }
  /** The design states neither floor area nor volume. */
  | { readonly code: 'size-unknown' }
  | { readonly code: 'no-such-night'; readonly date: string }
);
