/** What is to be said of the gap beside its figures: codes; the sentences are in `words/`. */
import type { Estimate } from '../assessment.ts';
import type { Bare } from './withoutInsulation.ts';

export type GapNote =
  /** What stands on either side [W/K], and how sure the design itself is. */
  | {
      readonly code: 'gap-compared';
      readonly asTested: boolean;
      readonly drawn: number;
      /** The design states its ventilation. */
      readonly withAir: boolean;
      readonly range: Estimate | null;
      readonly onGround: boolean;
      /** Elements to heated neighbours, on neither side. */
      readonly neighbours: readonly string[];
    }
  /** By the best figure so much less than drawn; by the end of the interval so much more, or below zero less [W/K]. */
  | {
      readonly code: 'gap-none';
      /** The verdict is that it meets the design. */
      readonly sure: boolean;
      readonly less: number;
      readonly most: number;
    }
  /** No ventilation is drawn, while air is in what was measured. */
  | { readonly code: 'gap-without-air' }
  /** Nights may have been measured with vents shut, but the design is known in use only. */
  | { readonly code: 'gap-vents-in-use' }
  /** The interval reaches down to the design; at most [W/K]. */
  | { readonly code: 'gap-may-be-none'; readonly most: number }
  /** What was measured lies within the design's own range, which ends here [W/K]. */
  | { readonly code: 'gap-within-design'; readonly high: number }
  /** [W/(m²K)], and the ventilation that was taken out [W/K]. */
  | {
      readonly code: 'mean-transmittance';
      readonly asTested: boolean;
      readonly measured: Estimate;
      readonly drawn: number;
      readonly ventilation: Estimate;
    }
  /** What is said of single elements was not measured in them. */
  | { readonly code: 'gap-in-elements' }
  /** Even at its worst it explains so much of the gap at most [–]. */
  | ({ readonly code: 'element-cannot-carry'; readonly name: string; readonly share: number } & Bare);
