/** What is to be said of where to look first: codes and figures; the sentences are in `words/`. */
import type { Estimate } from '../../assessment.ts';

interface Blown {
  readonly place: string;
  readonly change: Estimate;
  /** [m/s] */
  readonly calm: number;
  readonly windy: number;
  readonly chance: number;
}

/** Of one place. */
export type LookNote =
  | {
      readonly code: 'look-room-faster';
      readonly room: string;
      readonly ratio: Estimate;
      readonly expected: Estimate | null;
      readonly chance: number;
    }
  /** The fastest, but no faster than rooms of a sound house differ. */
  | {
      readonly code: 'look-room-ordinary';
      readonly room: string;
      readonly ratio: Estimate;
      readonly expected: Estimate | null;
    }
  | ({ readonly code: 'look-room-in-wind' } & Blown)
  | {
      readonly code: 'look-room-colder';
      readonly room: string;
      /** 0 as cold as outdoors, 1 as warm as the house [–]: at the end of the windows, and in the mean at their start. */
      readonly level: Estimate;
      readonly evening: number;
      readonly chance: number;
    }
  /** Than the house, in the mean of the nights' windows [K]. */
  | { readonly code: 'look-room-warmer'; readonly room: string; readonly excess: number }
  | {
      readonly code: 'look-void-warm';
      readonly place: string;
      readonly index: Estimate;
      readonly expected: Estimate;
      /** Nobody stated how warm the void would be. */
      readonly assumed: boolean;
      readonly chance: number;
    }
  | ({ readonly code: 'look-void-warms-in-wind' } & Blown)
  | ({ readonly code: 'look-void-aired' } & Omit<Blown, 'chance'>)
  | {
      readonly code: 'look-void-moist';
      readonly place: string;
      /** [kg/m³] */
      readonly excess: Estimate;
      /** Over that of the rooms [–]; null where no humidity was logged inside. */
      readonly share: number | null;
      readonly chance: number;
    }
  | {
      readonly code: 'look-surface-cold';
      readonly place: string;
      readonly element: string;
      readonly factor: Estimate;
      readonly expected: Estimate;
      readonly chance: number;
    }
  /** Clear by itself, but not among so many. */
  | { readonly code: 'look-may-be-chance'; readonly chance: number; readonly looked: number };

/** Of all places together. */
export type LooksNote =
  | { readonly code: 'look-nothing-stands-out'; readonly looked: number }
  | { readonly code: 'look-one-logger-each' }
  | { readonly code: 'look-rooms-not-named' }
  | { readonly code: 'look-wind-not-logged' }
  | { readonly code: 'look-wind-alike' };
