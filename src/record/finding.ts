/** What was noticed while the files of a house became one record. */
import type { Quantity, Where } from '../assessment.ts';
import type { SenseFinding } from '../sense/index.ts';
import type { HeatUnitDoubt } from './heatUnit.ts';

export type RecordFinding = SenseFinding | GatheringFinding;

type GatheringFinding = { readonly where: Where } & (
  | { readonly code: 'file-missing' }
  | { readonly code: 'file-not-taken'; readonly why: 'a folder' | 'too large' | 'unreadable' }
  /** It grew while it was read: the logger or a copy is still at work. */
  | { readonly code: 'file-still-written' }
  | { readonly code: 'no-temperature-in-file' }
  /** Fewer than two readings remain: nothing can be laid on a grid. */
  | { readonly code: 'logger-too-short' }
  | {
      readonly code: 'several-columns-first-taken';
      readonly quantity: Quantity;
      readonly columns: readonly string[];
    }
  | { readonly code: 'no-heat-in-file'; readonly kind: string }
  /** Readings further apart than two hours, or outside the record: no night and no day can be told from them. */
  | { readonly code: 'heat-not-usable' }
  /** Or jumped ahead by more than a house draws. */
  | { readonly code: 'meter-ran-backwards'; readonly count: number }
  | { readonly code: 'outside-from-weather' }
  /** A constant inside temperature [°C] stands where loggers were inside: they are believed. */
  | { readonly code: 'inside-logged'; readonly stated: number }
  /** Heat in a unit that cannot be right, kept out until somebody says so [W]. */
  | ({ readonly code: 'heat-unit-doubted' } & HeatUnitDoubt)
  /** [s] of the record without, of how much. */
  | { readonly code: 'heat-shorter-than-record'; readonly without: number; readonly of: number }
  /** Two exports of one logger give different values for the same instants; the file named first is believed. */
  | { readonly code: 'exports-conflict'; readonly count: number; readonly first: string }
  /** A file named as a later export has mostly other values for the same instants; it was left out. */
  | {
      readonly code: 'not-the-same-logger';
      readonly common: number;
      readonly conflicts: number;
      readonly first: string;
    }
  /** A span of house.json in which there is nothing to leave out or to put back. */
  | { readonly code: 'span-without-effect'; readonly key: 'leaveOut' | 'putBack'; readonly from: string }
  /** A temperature without a unit, read as another file of the house can only be read. */
  | { readonly code: 'unit-as-other-files'; readonly taken: 'F' }
  /** Readings that were doubted and are used all the same, because the house puts them back. */
  | { readonly code: 'readings-put-back'; readonly count: number }
  /** What a logger was off while all lay side by side, now taken off its readings [K]. */
  | { readonly code: 'co-location-offset'; readonly offset: number; readonly standardError: number }
  /** [s] after the first hour; nothing was taken off. */
  | { readonly code: 'co-location-too-short'; readonly duration: number }
  | { readonly code: 'co-location-too-few' }
  /** They differ by more than any loggers do [K]: they cannot have lain side by side. Nothing was taken off. */
  | { readonly code: 'co-location-apart'; readonly offset: number }
  /** Used, but short or not steady: [s] and [K]. */
  | { readonly code: 'co-location-brief'; readonly duration: number }
  | { readonly code: 'co-location-unsteady'; readonly range: number }
  /** Loggers that did not lie beside the others. */
  | { readonly code: 'co-location-absent'; readonly files: readonly string[] }
);
