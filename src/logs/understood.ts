/** What was made of a file before its rows were read, and why: what a person is shown and may change. */
import type { Quantity } from '../assessment.ts';
import type { DateOrder } from './dateOrder.ts';
import type { Encoding } from './encoding.ts';
import type { Decimal } from './numbers.ts';
import type { Delimiter } from './table.ts';

export interface Understood {
  /** The archive that the file came in. */
  readonly packed: 'zip' | 'gzip' | null;
  readonly encoding: Encoding;
  readonly delimiter: Delimiter;
  readonly decimal: Decimal;
  /** The line of the header, from 1; null where there is none. */
  readonly headerLine: number | null;
  readonly preamble: Preamble;
  readonly clock: UnderstoodClock;
  /** Every column of the file, those that are not read as well. */
  readonly columns: readonly UnderstoodColumn[];
  /** The first three data rows as they stand. */
  readonly sample: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

/** What stands above the header: its lines, and what could be made of them. */
export interface Preamble {
  readonly lines: readonly string[];
  readonly serial: string | null;
  readonly logger: string | null;
  /** As the file writes it. */
  readonly zone: string | null;
  /** [s] */
  readonly interval: number | null;
}

export interface UnderstoodClock {
  /** Headers of the columns that hold the time. */
  readonly columns: readonly string[];
  readonly written:
    | 'date and time'
    | 'epoch seconds'
    | 'epoch milliseconds'
    | 'epoch microseconds'
    | 'epoch nanoseconds'
    | 'serial days from 1900'
    | 'serial days from 1904'
    | 'elapsed'
    | 'sample numbers';
  /** Null where the text leaves nothing open. */
  readonly order: DateOrder | null;
  readonly orderBy: 'the text' | 'the whole file' | 'the house' | 'the other files' | 'a guess';
  /** What turns the shown times into instants. */
  readonly zoneBy: 'each row' | 'the header' | 'the preamble' | 'the house';
  /** An IANA zone or an offset such as "+01:00"; null where each row has its own. */
  readonly zone: string | null;
}

export interface UnderstoodColumn {
  readonly column: string;
  /** Null where it is not read. */
  readonly quantity: Quantity | null;
  /** What it is instead; null where it is read. */
  readonly notRead: NotRead | null;
  /** The unit as the file or the house has it, else the usual one; null where it is not read. */
  readonly unit: string | null;
  /** The file or the house says the unit; false where the usual one was taken, and where it is not read. */
  readonly unitStated: boolean;
  /** What speaks for it, the strongest first. */
  readonly because: readonly ('the house' | 'the header' | 'the unit' | 'the values')[];
  /**
   * `certain` where the house or header and unit say it; `likely` by header or unit, or where nothing says the unit;
   * `guessed` by the values alone.
   */
  readonly confidence: 'certain' | 'likely' | 'guessed' | null;
}

export type NotRead =
  | 'time'
  /** What happened rather than what was measured: a button, a door, an alarm. */
  | 'event'
  /** The numbers of the samples. */
  | 'counter'
  /** A minimum, maximum or limit beside the reading itself. */
  | 'statistic'
  | 'text'
  | 'empty'
  /** Numbers of nothing that is known. */
  | 'unknown';
