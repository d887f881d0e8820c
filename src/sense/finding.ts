/** What the sense asks: a code, its evidence, and what to write into `house.json` if the answer is yes. */
import type { Where } from '../assessment.ts';
import type { House, Logger } from '../house.ts';

/**
 * Keys of one entry of `house.json` as they would stand after a yes; each offer is an answer of its own.
 * Nothing is applied. `leaveOut` holds the spans to add to those that are there.
 */
export type Offer =
  | { readonly clockOffsetMin: number }
  | { readonly timeZone: string }
  | { readonly leaveOut: NonNullable<Logger['leaveOut']> }
  | { readonly place: Logger['place'] };

/** How much a clock is behind, with its interval [s]: what to add to give true time. */
export interface ClockError {
  /** The part of the record that it was read from: between two changes of the zone's clock [s]. */
  readonly from: number;
  readonly to: number;
  readonly correction: number;
  readonly low: number;
  readonly high: number;
  /** Days that speak. */
  readonly days: number;
}

export type SenseFinding = { readonly where: Where; readonly offers: readonly Offer[] } & (
  | PlaceFinding
  | SunFinding
  | CarriedFinding
  | SameFinding
  | StoppedFinding
  | ClockFinding
);

/** [K] where not said otherwise. */
export type PlaceFinding =
  | {
      /** Two loggers stand where the other should. */
      readonly code: 'loggers-swapped';
      readonly other: Where;
      /** By how much the one said to be colder is warmer, on average. */
      readonly warmerBy: number;
      /** Median daily range of the one said to be outside, and of the one said to be inside. */
      readonly dailyRange: number;
      readonly otherDailyRange: number;
      readonly days: number;
    }
  | {
      readonly code: 'logger-placed-elsewhere';
      readonly place: Logger['place'];
      readonly looksLike: 'inside' | 'outside';
      /** Mean difference to the loggers of its own place, and to those it looks like. */
      readonly fromOwn: number;
      readonly fromOther: number;
      /** Its daily ups and downs over those outdoors. */
      readonly followsOutdoors: number;
      readonly days: number;
    };

export interface SunFinding {
  readonly code: 'logger-in-sun';
  /** Indoors a patch of sun and a heater look alike, and outdoors without a second thermometer all rests on the shape. */
  readonly sure: boolean;
  /** By the clock on the wall, hours and parts of them: nine in ten of the bumps lie between. */
  readonly fromHour: number;
  readonly toHour: number;
  /** Where the sun then stands, from north, clockwise [rad]. */
  readonly fromAzimuth: number;
  readonly toAzimuth: number;
  /** Median and largest height of a day's bump over the others [K]. */
  readonly height: number;
  readonly highest: number;
  /** Days with a bump, of so many. */
  readonly sunnyDays: number;
  readonly days: number;
  /** Time spent in bumps by day, and in the night [s]. */
  readonly byDay: number;
  readonly byNight: number;
}

export interface CarriedFinding {
  readonly code: 'logger-carried';
  readonly end: 'beginning' | 'end';
  /** [s] */
  readonly from: number;
  readonly to: number;
  readonly quantity: 'temperature' | 'humidity';
  /** Against its peers, or against its own later course where there are none. */
  readonly against: 'peers' | 'itself';
  /** Furthest from where it belongs, and what the rest of the record keeps within in 199 of 200 readings [K or –]. */
  readonly furthest: number;
  readonly usual: number;
  /** Largest change within half an hour, and the largest of the rest of the record [K or –]. */
  readonly step: number;
  readonly usualStep: number;
}

export interface SameFinding {
  readonly code: 'same-recording';
  readonly other: Where;
  /** The other's time less this one's [s]. */
  readonly shift: number;
  /** Readings compared, how many of them agree, and how often the values changed. */
  readonly compared: number;
  readonly agree: number;
  readonly changes: number;
  /** [K]; they differ where one was rounded. */
  readonly resolution: number;
  readonly otherResolution: number;
}

export interface StoppedFinding {
  readonly code: 'logger-stopped';
  /** What it repeats [°C], from when to when [s], and how far the others of its place moved meanwhile [K]. */
  readonly value: number;
  readonly from: number;
  readonly to: number;
  readonly peersMoved: number;
}

export type ClockFinding =
  | {
      /** Daylight measured while the sun was below the horizon. */
      readonly code: 'clock-off-sun';
      readonly parts: readonly ClockError[];
    }
  | {
      /** It sees at another hour what the others see. */
      readonly code: 'clock-off-peers';
      readonly parts: readonly ClockError[];
      readonly against: readonly Where[];
      /** False with a single other: then either may be off. */
      readonly majority: boolean;
      /** Correlation of the rates of change, as the clocks are and with the correction. */
      readonly correlationNow: number;
      readonly correlationThen: number;
    }
  | {
      /** The warmest hour outdoors lies far from the afternoon; weak, and only good to some hours. */
      readonly code: 'clock-off-rhythm';
      readonly parts: readonly ClockError[];
      /** Of the sun, when it is warmest by the clock as it is [hours]. */
      readonly warmestHour: number;
    };

export type LocalSpans = NonNullable<House['loggers'][number]['leaveOut']>;
