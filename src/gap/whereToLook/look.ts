/** A place that was looked at, and how likely chance alone is to show as much. */
import type { Estimate } from '../../assessment.ts';
import type { LookNote } from './note.ts';

export type LookKind = 'room' | 'room-level' | 'void' | 'void-moisture' | 'surface';

/** How a figure differs between a calm night and a windy one (the lower and upper quartile of the nights). */
export interface InWind {
  /** Of a room: its ratio when windy over that when calm [–]. Of a void: by how much its index rises [–]. */
  readonly change: Estimate;
  /** Means over the nights' windows [m/s]. */
  readonly calm: number;
  readonly windy: number;
  readonly nights: number;
  /** As in `Look`, of a change for the worse. */
  readonly chance: number;
}

export interface Look {
  /** The room, or what the logger hangs in or lies on. */
  readonly place: string;
  readonly file: string;
  readonly kind: LookKind;
  /**
   * Of a room: its time constant over the house's [–]. Of its level: how warm it is at the end of the nights' windows,
   * 0 as outdoors and 1 as the house [–]. Of a void: its temperature index, 0 as cold as outdoors and 1 as
   * warm as the house [–]. Of its moisture: vapour above that outdoors [kg/m³]. Of a surface: its temperature factor [–].
   */
  readonly figure: Estimate;
  /** The same as drawn; null where the design does not tell. */
  readonly expected: Estimate | null;
  readonly inWind: InWind | null;
  /**
   * Probability that nothing is the matter and chance alone shows so much or more somewhere among all that was looked
   * at [–]; null where there is nothing to judge the figure by.
   */
  readonly chance: number | null;
  readonly notes: readonly LookNote[];
}

/** A look before it is set beside all others: each chance is its own, as if nothing else had been looked at. */
export interface Sight extends Omit<Look, 'notes'> {
  /** What is to be said once the chances are known; `weak` where it was clear by itself, and is not among all. */
  readonly say: (look: Omit<Look, 'notes'>, weak: boolean) => readonly LookNote[];
}

/** Below this a place stands out. */
export const STANDS_OUT = 0.05;

export const standsOut = (chance: number | null | undefined): boolean =>
  chance !== null && chance !== undefined && chance < STANDS_OUT;

/** The least chance that a place has, by its figure or in wind. */
export const leastChance = ({ chance, inWind }: Pick<Look, 'chance' | 'inWind'>): number =>
  Math.min(chance ?? 1, inWind?.chance ?? 1);

/** What a note tells of a change in wind. */
export const windOf = ({ change, calm, windy, chance }: InWind) => ({ change, calm, windy, chance });
