/** What the whole-record sense looks at: the loggers of one house, and its weather. */
import type { Logger } from '../house.ts';
import type { Readings } from '../series/laying.ts';

export type { Readings };

/** How the file's clock was read. */
export interface ReadClock {
  readonly file: string;
  /** Where one file holds several loggers. */
  readonly column?: string;
  /** The zone that the file was read in; the house's own when left out. */
  readonly timeZone?: string;
  /** Already added to the clock [s]; 0 when left out. */
  readonly clockOffset?: number;
}

export interface SensedLogger extends ReadClock {
  readonly place: Logger['place'];
  /** [°C], without doubted readings and with the offsets of `house.json`. */
  readonly temperature: Readings;
  /** [–, 0 to 1] */
  readonly relativeHumidity?: Readings;
}

export interface SensedWeather extends ReadClock {
  /** [°C], each value standing for the time around its instant. */
  readonly temperature?: Readings;
  /** On the level [W/m²], each value standing for the time around its instant. */
  readonly irradiance?: Readings;
}
