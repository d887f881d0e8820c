/** What a method says about the heat loss, and how it came about. */
import type { Estimate, Method, Tier } from '../assessment.ts';

/** Notes on an estimate: codes and figures; the sentences are in `words/`. */
export type HeatLossNote =
  /** How far a method is known to read low, as a share of the truth. */
  | { readonly code: 'known-bias'; readonly readsLowBy: number }
  /** Relative standard deviation of the heat capacity that the figure rests on. */
  | { readonly code: 'rests-on-capacity'; readonly relativeSd: number }
  | { readonly code: 'gains-allowed-for' /** [W] */; readonly gains: number }
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
  | { readonly code: 'days-used'; readonly used: number; readonly leftOut: number }
  | { readonly code: 'sun-not-separable' }
  | { readonly code: 'no-irradiance' }
  /** How much of the leakage the wind drove is not known. */
  | { readonly code: 'no-wind' }
  | { readonly code: 'still-drying'; readonly weeks: number };

export interface HeatLossEstimate {
  readonly method: Method;
  /** The richest heat information that it used. */
  readonly tier: Tier;
  /** Heat-loss coefficient [W/K]. */
  readonly heatLossCoefficient: Estimate;
  readonly notes: readonly HeatLossNote[];
}
