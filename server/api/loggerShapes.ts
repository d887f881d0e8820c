/** What the pages about humidity and about the loggers may know of the answers: beside `shapes.ts`. */
import type { Quantity } from '../../src/assessment.ts';
import type { ReadingsAnswer, ThinnedChannel, Work } from './shapes.ts';

/** Moist air, thinned: of each logger temperature, humidity and what follows from both. */
export interface HumidityAnswer
  extends Pick<ReadingsAnswer, 'first' | 'last' | 'time' | 'step' | 'channels'> {
  /** Vapour inside over outside [g/m³], one for each logger inside; none where nothing was logged outside. */
  readonly excess: readonly ThinnedChannel[];
  readonly loggers: readonly LoggerMoisture[];
  /** The file that stands for the air outside; null without one. */
  readonly outside: string | null;
}

/** How far the humidity is worked out; null when nobody waits for it, or not for long. */
export interface HumidityProgress {
  readonly work: Work | null;
}

export interface LoggerMoisture {
  readonly file: string;
  readonly room: string | null;
  readonly place: ThinnedChannel['place'];
  /** Of every reading. */
  readonly mean: MeanMoisture;
  /** From sunset to sunrise; those without a reading are left out. */
  readonly nights: readonly ({ readonly date: string } & MeanMoisture)[];
}

/** Null where it is not known. */
export interface MeanMoisture {
  readonly temperatureC: number;
  readonly humidityPercent: number;
  readonly absoluteGM3: number;
  readonly dewPointC: number | null;
  readonly excessGM3: number | null;
}

export interface LoggersAnswer {
  /** When it was asked [s], by the clock of the machine. */
  readonly asked: number;
  /** Of every channel of every file, in the order of the house. */
  readonly channels: readonly ChannelFacts[];
}

export interface ChannelFacts {
  readonly file: string;
  readonly column: string;
  readonly quantity: Quantity;
  readonly unit: string;
  readonly readings: number;
  /** Bounds of the readings [s]. */
  readonly first: number;
  readonly last: number;
  /** Usual time between two readings [s]; 0 with a single one. */
  readonly every: number;
  /** Smallest step between two values, in `unit`; 0 where all are alike. */
  readonly resolution: number;
  readonly gaps: { readonly count: number; readonly longest: number };
  /** Readings that something speaks against. */
  readonly doubted: number;
}
