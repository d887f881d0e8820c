/** What was noticed while the files of a house became one record. */
import type { Quantity, Where } from '../assessment.ts';

export type RecordFinding = { readonly where: Where } & (
  | { readonly code: 'file-missing' }
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
  | { readonly code: 'meter-ran-backwards'; readonly count: number }
  | { readonly code: 'outside-from-weather' }
  | { readonly code: 'key-not-used-yet' }
  /** Two exports of one logger give different values for the same instants; the file named first is believed. */
  | { readonly code: 'exports-conflict'; readonly count: number; readonly first: string }
  /** Readings that were doubted and are used all the same, because the house puts them back. */
  | { readonly code: 'readings-put-back'; readonly count: number }
);
