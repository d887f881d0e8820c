/** What the moisture calculation noticed, and what it cannot see: codes and figures [SI]. */
import type { Where } from '../../assessment.ts';

/** Where in the build-up: the names of the layers on both sides, the same twice inside a layer. */
export interface Between {
  readonly inner: string;
  readonly outer: string;
}

export type MoistureFinding = { readonly where: Where } & Noticed;

type Noticed =
  /** A layer states neither `vapourResistance` nor `sdM`, so nothing was calculated. */
  | { readonly code: 'vapour-resistance-missing'; readonly name: string }
  /** The standard does not reach elements on the ground, so nothing was calculated. */
  | { readonly code: 'moisture-ground-not-covered' }
  /** Air that flows through joints carries far more vapour than diffusion; the method knows none. */
  | { readonly code: 'moisture-airflow-not-covered' }
  /** Capillary flow, stored and built-in moisture, rain and rising damp are not in the method. */
  | { readonly code: 'moisture-liquid-not-covered' }
  /** Calculated through the insulation, beside its timbers. */
  | { readonly code: 'moisture-beside-bridge'; readonly name: string }
  /** This layer is well ventilated: it and all outside it were taken as outdoors. */
  | { readonly code: 'moisture-ends-at-ventilated'; readonly name: string }
  /** A slightly ventilated layer was taken as still air: the air that dries it is not in the method. */
  | { readonly code: 'moisture-vent-taken-as-still'; readonly name: string }
  /** The air inside is above saturation on the inside surface in these months, 0 for January. */
  | { readonly code: 'surface-condensation'; readonly months: readonly number[] }
  | { readonly code: 'condensation-none' }
  /** The largest mass in the whole build-up [kg/m²] at the end of a month, gone by the end of another. */
  | {
      readonly code: 'condensation-dries';
      readonly mass: number;
      readonly month: number;
      readonly dryMonth: number;
      readonly at: Between;
    }
  /** Mass [kg/m²] that is still there after a year. */
  | { readonly code: 'condensation-stays'; readonly mass: number; readonly at: Between }
  /** More at one plane [kg/m²] than stays on a surface that does not soak it up. */
  | {
      readonly code: 'condensation-may-run';
      readonly mass: number;
      readonly limit: number;
      readonly at: Between;
    };
