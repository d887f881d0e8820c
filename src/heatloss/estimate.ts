/** What a method says about the heat loss, and how it came about. */
import type { Estimate, Method, Tier } from '../assessment.ts';
import type { Leaving } from './dailyBalance/heatDay.ts';
import type { VapourExcess } from './drying.ts';
import type { StateSpaceNote } from './stateSpace/index.ts';

/** Notes on an estimate: codes and figures; the sentences are in `words/`. */
export type HeatLossNote =
  /** How far a method is known to read low, as a share of the truth. */
  | { readonly code: 'known-bias'; readonly readsLowBy: number }
  /** Relative standard deviation of the heat capacity that the figure rests on. */
  | { readonly code: 'rests-on-capacity'; readonly relativeSd: number }
  | { readonly code: 'gains-allowed-for' /** [W] */; readonly gains: number }
  /** More than the house as drawn would have lost meanwhile [W]. */
  | { readonly code: 'gains-beyond-house'; readonly gains: number; readonly lost: number }
  | {
      readonly code: 'heater-weak' /** Share of the heater's power that the house loses anyway. */;
      readonly share: number;
    }
  | { readonly code: 'heater-strong'; readonly share: number }
  /** The watts come from another stage, carried over by the ratio of the cooling rates. */
  | { readonly code: 'borrowed-from-stage'; readonly stage: string }
  /** A heated night of another stage tells of the house that both share. */
  | { readonly code: 'calibrated-by-stage'; readonly stage: string }
  | { readonly code: 'heated-nights-used'; readonly dates: readonly string[] }
  /** Heated nights without two slopes to read: why. */
  | { readonly code: 'heater-cycled'; readonly dates: readonly string[] }
  | { readonly code: 'heater-uneven'; readonly dates: readonly string[] }
  | { readonly code: 'heater-on-too-short'; readonly dates: readonly string[] }
  | { readonly code: 'cooling-too-short'; readonly dates: readonly string[] }
  | { readonly code: 'heated-night-gap'; readonly dates: readonly string[] }
  | { readonly code: 'slopes-contradict'; readonly dates: readonly string[] }
  /** What strains the two slopes of a heated night that were read. */
  | { readonly code: 'settling-not-known'; readonly date: string }
  | { readonly code: 'mass-not-settled'; readonly date: string /** [K/s] */; readonly slope: number }
  | { readonly code: 'windy-night'; readonly date: string /** [m/s] */; readonly windSpeed: number }
  | {
      readonly code: 'wind-changed';
      readonly date: string /** Means of both phases [m/s]. */;
      readonly heating: number;
      readonly cooling: number;
    }
  | { readonly code: 'outdoors-drifted'; readonly date: string /** [K] */; readonly drift: number }
  /** A heated neighbour's share of all losses was taken off. */
  | { readonly code: 'neighbour-counted'; readonly share: number }
  | { readonly code: 'days-used'; readonly used: number; readonly leftOut: number }
  | { readonly code: 'too-few-metered-days'; readonly used: number; readonly needed: number }
  /** Enough days, but no heat loss comes out of them. */
  | { readonly code: 'metered-days-contradict'; readonly used: number }
  | { readonly code: 'days-left-out'; readonly why: Leaving; readonly count: number }
  /** Heat loss by days that begin at other hours than dawn, and by dawn's [W/K]. */
  | { readonly code: 'start-hour-moves'; readonly lowest: number; readonly highest: number }
  /** Nothing was logged inside: the temperature that the house states [°C], and how far it may be off [K]. */
  | { readonly code: 'inside-assumed'; readonly temperature: number; readonly plusMinus: number }
  /** [W] on average, negative where heat came in. */
  | {
      readonly code: 'neighbour-flow-taken-out';
      readonly flow: number;
      readonly known: 'logged' | 'stated' | 'assumed';
    }
  /** The sun's share of all heat, by the glass as drawn. */
  | { readonly code: 'sun-held-by-glass'; readonly share: number }
  | { readonly code: 'sun-of-ordinary-sky'; readonly share: number }
  | { readonly code: 'sun-not-separable' }
  | { readonly code: 'no-irradiance' }
  /** How much of the leakage the wind drove is not known. */
  | { readonly code: 'no-wind' }
  | { readonly code: 'still-drying'; readonly weeks: number }
  /** At night the air inside held much more vapour than outdoors, or wet trades were told of. */
  | ({ readonly code: 'vapour-excess'; readonly told: boolean } & VapourExcess)
  | StateSpaceNote;

export interface HeatLossEstimate {
  readonly method: Method;
  /** The richest heat information that it used. */
  readonly tier: Tier;
  /** Heat-loss coefficient [W/K]. */
  readonly heatLossCoefficient: Estimate;
  readonly notes: readonly HeatLossNote[];
}
