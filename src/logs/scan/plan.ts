/** What is known of a plain file before its rows are scanned. */
import type { Decimal } from '../numbers.ts';
import type { Shape } from '../stamp.ts';
import type { Delimiter } from '../table.ts';

export interface ScanPlan {
  readonly delimiter: Delimiter;
  /** Cells may stand in double quotes. */
  readonly quotes: boolean;
  readonly decimal: Decimal;
  /** Cells of every row. */
  readonly width: number;
  readonly time: ScanTime;
  /** The columns wanted as numbers, from 0. */
  readonly columns: readonly number[];
}

/** Where the time stands. Dates are three numbers; what `shape` they have is learnt from one cell (`dateShapeOf`). */
export type ScanTime =
  | { readonly kind: 'stamp'; readonly at: number; readonly shape: DateShape }
  | {
      readonly kind: 'date and time';
      readonly at: number;
      readonly time: number;
      readonly shape: DateShape;
    }
  | { readonly kind: 'epoch'; readonly at: number; readonly perSecond: 1 | 1000 };

/** 1 or 2 digits each, but a year of exactly four first or last, or two digits last and the year anywhere. */
export type DateShape = Exclude<Shape, 'day first'>;
