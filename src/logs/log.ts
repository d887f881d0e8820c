/** What reading a log gives: channels in SI, an account of the rows, and what was noticed on the way. */
import type { Quantity, Where } from '../assessment.ts';
import type { NotText } from './encoding.ts';
import type { Understood } from './understood.ts';
import type { Refusal } from './unpack.ts';

/**
 * One column of a log: its readings in the order of time, none of them missing.
 * Inside: temperature and dew point [°C], relative humidity [–, 0 to 1], absolute humidity [kg/m³], wind speed
 * [m/s], irradiance [W/m²], power [W], energy per interval and running meter [J], pressure [Pa], carbon dioxide
 * [mol/mol], voltage [V].
 */
export interface LogChannel {
  /** The header as the file has it, or "column 3" where there is none. */
  readonly column: string;
  readonly quantity: Quantity;
  /** Instants, strictly rising [s since 1970 UTC]. */
  readonly time: Float64Array;
  /** Values in the units above; same length as `time`, no NaN. */
  readonly value: Float64Array;
  /** What speaks against a reading: 0 for nothing, else 1 + its place in `doubtKinds`; same length as `time`. */
  readonly doubt: Uint8Array;
}

/** Why a reading is kept out of the fits until a person puts it back. */
export const doubtKinds = [
  /** Beyond what the quantity can be in and around a house. */
  'impossible',
  /** What a sensor gives before its first conversion. */
  'power-on',
  /** A zero among readings that are nowhere near it. */
  'false-zero',
  /** The same value for much longer than this sensor ever rests. */
  'stuck',
  /** One or a few readings far off both neighbours. */
  'spike',
] as const;
export type DoubtKind = (typeof doubtKinds)[number];

/** What a house says about a file beyond its bytes; everything here overrides a guess. */
export interface LogHints {
  /** IANA zone of the house, used where the file says nothing of its clock. */
  readonly timeZone: string;
  /** IANA zone that the house states for this file's clock: goes before what header or preamble say. */
  readonly clockZone?: string | undefined;
  /** Added to the file's clock to give true time [s]. */
  readonly clockOffset: number;
  /** Which column holds what, by header. */
  readonly columns: Readonly<Partial<Record<Quantity | 'time' | 'date', string>>>;
  readonly dateOrder?: 'day-first' | 'month-first' | 'year-first' | undefined;
  /** The order that the house's other files have for certain; it decides where this file leaves it open. */
  readonly orderOfOthers?: 'day-first' | 'month-first' | 'year-first' | undefined;
  /** The year from which a spreadsheet counted the days, where times are such numbers. */
  readonly serialFrom?: 1900 | 1904 | undefined;
  readonly decimal?: '.' | ',' | undefined;
  readonly temperatureUnit?: 'C' | 'F' | 'K' | undefined;
  /** What the one nameless column holds, where the house says what kind of file this is. */
  readonly expected?: Quantity | undefined;
  /** Energy in one unit of the meter [J], for a meter that counts something else (gas in m³). */
  readonly energyPerUnit?: number | undefined;
}

/** What was noticed. Lines count from 1 as an editor does. */
export type LogFinding = { readonly where: Where } & (
  | { readonly code: 'file-empty' }
  | { readonly code: 'file-not-text'; readonly looksLike: NotText }
  /** An archive that is not opened, and why. */
  | { readonly code: 'archive-refused'; readonly why: Refusal }
  | { readonly code: 'archive-several-logs'; readonly names: readonly string[] }
  /** Rows with NULs and other signs that no text holds, as a power cut leaves them. */
  | { readonly code: 'control-bytes'; readonly count: number; readonly lines: readonly number[] }
  | { readonly code: 'no-time-column' }
  /** Times that count from a start which the file does not name, or in a unit or interval that it does not name. */
  | { readonly code: 'start-not-told'; readonly headers: readonly string[] }
  | { readonly code: 'column-not-found'; readonly wanted: string; readonly headers: readonly string[] }
  | { readonly code: 'no-readings' }
  /** Rows with numbers whose time is written in no known way; the first such time as it stands. */
  | { readonly code: 'times-not-understood'; readonly said: string }
  | { readonly code: 'no-known-column'; readonly headers: readonly string[] }
  /** Rows without a time, or without a single value that is a number; the first few lines of them. */
  | {
      readonly code: 'rows-left-out';
      readonly count: number;
      readonly lines: readonly number[];
      readonly why: 'no time' | 'no value' | 'ragged';
    }
  /** Averages, extremes and the like at the end of the file. */
  | { readonly code: 'summary-left-out'; readonly count: number; readonly lines: readonly number[] }
  /** Headers that come again with their columns in another order; columns that only they have are not read. */
  | {
      readonly code: 'columns-moved';
      readonly count: number;
      readonly lines: readonly number[];
      readonly notRead: readonly string[];
    }
  | { readonly code: 'rows-repeated'; readonly count: number; readonly lines: readonly number[] }
  /** Two different values for one instant; the first is kept. */
  | { readonly code: 'values-conflict'; readonly count: number; readonly lines: readonly number[] }
  /** So many rows share an instant and differ in value that their time cannot have been read whole. */
  | { readonly code: 'times-collapse'; readonly count: number; readonly lines: readonly number[] }
  /** Another column of time, with other times; the columns that belong to it are not read. */
  | { readonly code: 'second-time-column'; readonly notRead: readonly string[] }
  /** Rows whose day and month stand the other way round than in the rest of the file. */
  | { readonly code: 'dates-contradict'; readonly count: number; readonly lines: readonly number[] }
  | { readonly code: 'rows-out-of-order'; readonly count: number; readonly lines: readonly number[] }
  /** Local times that the spring clock change leaves out. */
  | {
      readonly code: 'local-time-missing';
      readonly count: number;
      readonly lines: readonly number[];
      readonly timeZone: string;
    }
  /** A record that runs through the autumn clock change but has its doubled hour once: its clock may not change. */
  | {
      readonly code: 'doubled-hour-once';
      readonly count: number;
      readonly lines: readonly number[];
      readonly timeZone: string;
    }
  /** Neither the file nor the house tells day from month; the order taken is the one named. */
  | { readonly code: 'date-order-unknown'; readonly taken: 'day-first' | 'month-first' }
  /** Days since 1900 or 1904, which the file does not tell apart; the ones taken are those from the year named. */
  | { readonly code: 'serial-days-guessed'; readonly taken: 1900 | 1904 }
  /** Letters that stand for several zones of the world; the house's zone was taken. */
  | { readonly code: 'zone-ambiguous'; readonly said: string; readonly taken: string }
  /** Rows that a logger stamped with its first date after it lost power; they are left out of time. */
  | { readonly code: 'clock-reset'; readonly count: number; readonly lines: readonly number[] }
  | { readonly code: 'temperature-unit-guessed'; readonly taken: 'C' | 'F' | 'K' }
  /** Every marked number has three digits behind its mark, which may stand between thousands as well. */
  | { readonly code: 'decimal-mark-guessed'; readonly taken: '.' | ',' }
  /** Power in a unit that nothing names, with values that could as well be kW. */
  | { readonly code: 'unit-assumed'; readonly taken: 'W' }
  /** The file says °C over values that only °F explains; °C is kept where it is possible at all. */
  | { readonly code: 'unit-doubted'; readonly stated: 'C'; readonly taken: 'C' | 'F' }
  /** Neither header nor unit says what the column holds: its range of values alone does. */
  | { readonly code: 'quantity-guessed'; readonly taken: Quantity }
  | { readonly code: 'all-zero-column-left-out' }
  /** What a sensor writes in place of a reading: a number of the file's own unit such as -999, or a text such as "Err". */
  | {
      readonly code: 'sentinels-left-out';
      readonly value: number | string;
      readonly count: number;
      readonly lines: readonly number[];
    }
  /** Cells whose own unit measures something else than their column, the first of them as it stands. */
  | {
      readonly code: 'other-unit-left-out';
      readonly said: string;
      readonly count: number;
      readonly lines: readonly number[];
    }
  /** Readings that are kept out of the fits until the house puts them back. */
  | {
      readonly code: 'readings-doubted';
      readonly why: DoubtKind;
      readonly count: number;
      readonly lines: readonly number[];
    }
  /** Longer than an hour and than 2.5 of the usual steps: nothing is drawn across. */
  | {
      readonly code: 'gaps';
      readonly count: number;
      /** [s] */
      readonly longest: number;
      readonly lines: readonly number[];
    }
  | { readonly code: 'irregular-spacing' }
  /** A thermometer that shows only steps of this size [K]. */
  | { readonly code: 'coarse-steps'; readonly step: number }
);

/** The log as read, or why nothing could be read. */
export type LogReading =
  | {
      readonly kind: 'read';
      readonly file: string;
      /** Data rows met, repeats and bad ones included. */
      readonly rows: number;
      /** Rows that gave no reading. */
      readonly rejected: number;
      /** Median spacing of the rows [s]; null with a single row. */
      readonly interval: number | null;
      readonly understood: Understood;
      /** At least one. */
      readonly channels: readonly LogChannel[];
      readonly findings: readonly LogFinding[];
    }
  | {
      readonly kind: 'unreadable';
      readonly file: string;
      readonly rows: number;
      /** What could be made of it all the same; null where that is nothing. */
      readonly understood: Understood | null;
      readonly findings: readonly LogFinding[];
    };
