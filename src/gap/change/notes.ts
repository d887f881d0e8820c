/** What is to be said of a change and of a year's figures: codes; the sentences are in `words/`. */
import type { NightsToShow } from './detectable.ts';

export type ChangeNote =
  /** A share of the heat loss [–], and the nights on each side. */
  | { readonly code: 'smallest-change'; readonly change: number; readonly nights: readonly [number, number] }
  | { readonly code: 'nights-to-show'; readonly plan: readonly NightsToShow[] }
  /** Nothing stands after it (or before it) yet; the plan is empty where too few nights tell of their scatter. */
  | { readonly code: 'only-one-stage'; readonly plan: readonly NightsToShow[] }
  | { readonly code: 'side-without-nights'; readonly names: readonly string[] }
  | { readonly code: 'shared-nights-left-out'; readonly dates: readonly string[] }
  /** A plain ratio of stages that differ in their mass gives no watts. */
  | { readonly code: 'no-difference-for-mass' }
  | { readonly code: 'no-difference-without-watts' }
  /** Degree days [K·day] below a base [°C]. */
  | { readonly code: 'change-over-standard-year'; readonly degreeDays: number; readonly base: number }
  | { readonly code: 'no-degree-days' }
  | { readonly code: 'air-changes-if-leakage' }
  | { readonly code: 'air-changes-cut' }
  /** The fabric as drawn alone loses more than either stage was measured to. */
  | { readonly code: 'no-room-for-leakage' }
  | { readonly code: 'not-leakage-alone'; readonly names: readonly string[] }
  | { readonly code: 'no-volume' }
  /** Inside less outside [K] */
  | { readonly code: 'difference-apart'; readonly before: number; readonly after: number }
  /** [m/s] */
  | { readonly code: 'wind-apart'; readonly before: number; readonly after: number };

export type AnnualNote =
  /** With what is standard: degree days [K·day] below a base, inside and outside on the cold day [°C]. */
  | {
      readonly code: 'annual-for-orientation';
      readonly degreeDays: number;
      readonly base: number;
      readonly inside: number;
      readonly outside: number;
    }
  /** What the house as drawn loses more by its vents in use than shut [W/K]. */
  | {
      readonly code: 'annual-vents-added';
      readonly added: number /** Somebody said that they were shut. */;
      readonly said: boolean;
    }
  /** The air counts as it went through the house in the nights measured. */
  | { readonly code: 'annual-air-as-measured'; readonly ventsShut: boolean }
  /** A heated neighbour whose temperature nobody states is taken to be as warm. */
  | { readonly code: 'annual-neighbour-as-warm' }
  | { readonly code: 'annual-of-unfinished' }
  | { readonly code: 'no-standard-year' };
