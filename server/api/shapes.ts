/** What the API's answers look like: the one thing of the server that the pages import. */
import type { Assessment, Estimate, Imported, Message, Quantity, Verdict } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import type { House, Logger } from '../../src/house.ts';

/** How far the assessment of a house has come. */
export type HouseState =
  | { readonly kind: 'assessed' }
  /** In the queue or at work. */
  | ({ readonly kind: 'assessing' } & Work)
  /** Could not be assessed, and why. */
  | { readonly kind: 'not assessed'; readonly problems: readonly Message[] }
  /** Stopped by the person. */
  | { readonly kind: 'cancelled' };

/** Long work as it goes: the share that is done, from 0 to 1, and what is being done as a sentence. */
export interface Work {
  readonly done: number;
  readonly what: string;
}

export interface HousesAnswer {
  readonly houses: readonly HouseSummary[];
  /** The demonstration house is being made ready and will be among them shortly. */
  readonly demonstrationComing: boolean;
}

export interface HouseSummary {
  readonly id: string;
  readonly name: string;
  /** The demonstration house: its readings are invented. */
  readonly invented: boolean;
  /** Put away from the list, to be brought back. */
  readonly away: boolean;
  /** ISO 8601 with the house's offset. */
  readonly lastReading: string | null;
  /** A date that was agreed on; left out while none was. */
  readonly keepUntil?: string;
  readonly state: HouseState;
  /** Of the last stage; null until assessed. */
  readonly answer: {
    readonly stage: string;
    readonly heatLossWK: Estimate | null;
    readonly drawnWK: number | null;
    readonly ratio: Estimate | null;
    readonly verdict: Verdict | null;
    readonly timeConstantH: Estimate | null;
  } | null;
}

export interface HouseDetail extends HouseSummary {
  /** `house.json` as it was brought. */
  readonly house: House;
  readonly assessment: Assessment | null;
  /** The original files and their SHA-256. */
  readonly files: readonly { readonly file: string; readonly bytes: number; readonly sha256: string }[];
  /** Oldest first; the last one can be undone when there are two or more. */
  readonly imports: readonly KeptImport[];
}

export interface NightsAnswer {
  readonly curves: readonly NightCurve[];
  /** Of each curve's night the mean wind over its fitted hours; left out where no wind was logged. */
  readonly wind?: readonly { readonly date: string; readonly meanMS: number | null }[];
}

/**
 * One channel thinned to at most `points` intervals by minimum and maximum; a gap is null. An interval that merely
 * lies between two readings, no further apart than 2.5 of the channel's usual steps, has the straight line's value.
 */
export interface ThinnedChannel {
  readonly file: string;
  readonly column: string;
  readonly room: string | null;
  readonly place: 'inside' | 'outside' | 'void' | 'surface' | 'adjacent' | 'weather' | 'heat';
  readonly quantity: Quantity;
  /** The unit of the values, as in the assessment's JSON. */
  readonly unit: string;
  readonly min: readonly (number | null)[];
  readonly max: readonly (number | null)[];
  /** Readings of the shown span that something speaks against; left out when there are none. */
  readonly doubted?: {
    /** The first of them, at most 500, in the order of time [s]. */
    readonly at: readonly number[];
    /** Whether there are others. */
    readonly more: boolean;
  };
}

export interface ReadingsAnswer {
  /** Bounds of the whole record [s]. */
  readonly first: number;
  readonly last: number;
  /** The middle of each interval [s]; shared by all channels. */
  readonly time: readonly number[];
  /** Length of an interval [s]. */
  readonly step: number;
  readonly channels: readonly ThinnedChannel[];
  /** Sunset to sunrise [s]. */
  readonly nights: readonly {
    readonly date: string;
    readonly sunset: number;
    readonly sunrise: number;
    readonly used: boolean;
  }[];
  readonly stages: readonly { readonly name: string; readonly from: number; readonly to: number }[];
  /** What house.json notes at an instant [s]; `local` as it is written there. */
  readonly notes: readonly { readonly at: number; readonly local: string; readonly text: string }[];
  /** When the heat was on by house.json, where no file has it [s]. */
  readonly heating: readonly { readonly from: number; readonly to: number }[];
  /** What a person keeps out of a logger's readings [s]. */
  readonly leftOut: readonly {
    readonly file: string;
    readonly from: number;
    readonly to: number;
    readonly why: string | null;
  }[];
}

/** A house folder on its way in: nothing of it is stored until it is kept. */
export interface BringingPreview {
  readonly id: string;
  /** The stored house that it is added to; null for a house of its own. */
  readonly onto: { readonly id: string; readonly name: string } | null;
  /** `house.json` as far as it is valid; null until it is. */
  readonly house: House | null;
  /** What is wrong with `house.json`, or that it is not there; and what is missing for an assessment. */
  readonly problems: readonly Message[];
  /** Every log that has come, those that `house.json` does not name as well. */
  readonly files: readonly FilePreview[];
  /** Named by `house.json`, not come yet. */
  readonly missing: readonly string[];
  /** What only shows when all loggers are seen together. */
  readonly notes: readonly Message[];
  /** Whether it can be kept: a valid house, with an inside and an outdoor temperature. */
  readonly ready: boolean;
}

/** One log as it was understood. */
export interface FilePreview {
  readonly imported: Imported;
  /** By `house.json`; what it does not name is not stored. */
  readonly named: boolean;
  /** How a file of this layout was read when one was last kept; null when none was. */
  readonly remembered: ReadingAnswers | null;
  /** What it changes of the house that it is added to; null for a house of its own. */
  readonly change: FileChange | null;
}

/** The answers of `house.json` to what a file does not say. */
export type ReadingAnswers = Pick<Logger, 'columns' | 'timeZone' | 'clockOffsetMin' | 'read'>;

export interface FileChange {
  /** The very bytes are stored; a later export of a logger that is stored; a logger that is not. */
  readonly kind: 'same' | 'continues' | 'new';
  /** The stored file of the same logger. */
  readonly of: string | null;
  readonly newReadings: number;
  /** Instants for which another value is stored: the stored one stays unless the person has it otherwise. */
  readonly conflicts: {
    readonly count: number;
    /** The first few, values in the JSON's unit. */
    readonly first: readonly {
      readonly at: string;
      readonly column: string;
      readonly stored: number;
      readonly brought: number;
    }[];
  };
}

/** What was kept of a house, one entry for each time: the latest can be undone. */
export interface KeptImport {
  /** ISO 8601; null for what was kept before such times were. */
  readonly at: string | null;
  /** Those that were new or other than before; none when only `house.json` was. */
  readonly files: readonly string[];
}

/** The answer to an upload: what has come, whole. */
export interface TakenFile {
  /** As the house is to call it: another than it was sent by where the house has a file of that name already. */
  readonly name: string;
  readonly bytes: number;
}

/** The events of GET /api/bringings/:id/progress, as JSON in `data`. */
export interface BringingProgress {
  /** The files being read for the preview; null while none is. */
  readonly reading: Work | null;
}

/** The answer to readings that were sent to a house: POST /api/houses/:id/readings. */
export interface AddedExport {
  /** The file of the house in which they stand now; null when nothing was new and nothing was stored. */
  readonly file: string | null;
  /** The logger's first file. */
  readonly of: string;
  readonly newReadings: number;
  /** Instants for which another value is stored, which stays. */
  readonly conflicts: number;
}

/** What is amiss in the watched folder. */
export interface WatchedAnswer {
  /** Null when no folder is watched. */
  readonly folder: string | null;
  readonly problems: readonly WatchedProblem[];
}

export interface WatchedProblem {
  /** Below the watched folder. */
  readonly path: string;
  /** The id of the house that its folder is named for; null when there is none. */
  readonly house: string | null;
  readonly problems: readonly Message[];
}

/** Every refusal of the API: what happened, where, and what to do. */
export interface Refusal {
  readonly problems: readonly Message[];
}

/** The events of GET /api/houses/:id/progress, as JSON in `data`. */
export interface Progress {
  readonly state: HouseState;
}
