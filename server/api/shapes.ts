/** What the API's answers look like: the one thing of the server that the pages import. */
import type { Assessment, Estimate, Imported, Message, Quantity, Verdict } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import type { House } from '../../src/house.ts';

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
}

export interface NightsAnswer {
  readonly curves: readonly NightCurve[];
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
}

/** A house folder on its way in: nothing of it is stored until it is kept. */
export interface BringingPreview {
  readonly id: string;
  /** Null until a valid `house.json` has come. */
  readonly name: string | null;
  /** What is wrong with `house.json`; also that it is not there yet. */
  readonly problems: readonly Message[];
  /** What was understood of each file that has come and is named by `house.json`. */
  readonly imports: readonly Imported[];
  /** Named by `house.json`, not come yet. */
  readonly missing: readonly string[];
  /** Come, but not named by `house.json`: they will not be stored. */
  readonly unnamed: readonly string[];
  /** Whether it can be kept: a valid house, with an inside and an outdoor temperature. */
  readonly ready: boolean;
}

/** The answer to an upload: what has come, whole. */
export interface TakenFile {
  readonly name: string;
  readonly bytes: number;
}

/** The events of GET /api/bringings/:id/progress, as JSON in `data`. */
export interface BringingProgress {
  /** The files being read for the preview; null while none is. */
  readonly reading: Work | null;
}

/** Every refusal of the API: what happened, where, and what to do. */
export interface Refusal {
  readonly problems: readonly Message[];
}

/** The events of GET /api/houses/:id/progress, as JSON in `data`. */
export interface Progress {
  readonly state: HouseState;
}
