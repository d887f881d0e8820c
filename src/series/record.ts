/** A house's whole record on one grid: what the cooling and the heat loss are read from. */
import type { Grid } from './grid.ts';

export interface RoomSeries {
  readonly file: string;
  readonly room: string;
  readonly place: 'inside' | 'outside' | 'void' | 'surface' | 'adjacent';
  /** [°C], NaN where missing; as long as the grid. */
  readonly temperature: Float64Array;
  /** [–, 0 to 1]; null where the logger has none. */
  readonly relativeHumidity: Float64Array | null;
}

export interface HouseRecord {
  readonly grid: Grid;
  readonly rooms: readonly RoomSeries[];
  /** Mean of the inside loggers weighted by volume [°C], NaN where missing. */
  readonly insideTemperature: Float64Array;
  /** From the outside loggers, weather where they have gaps [°C], NaN where missing. */
  readonly outsideTemperature: Float64Array;
  /** Standard deviation of what the loggers' own errors add to inside less outside, the same all through [K]. */
  readonly differenceSd: number;
  /** Smallest step of the coarsest inside logger [K]. */
  readonly insideResolution: number;
  /** [m/s]; null when none was given. */
  readonly windSpeed: Float64Array | null;
  /** Global horizontal [W/m²]; null when none was given. */
  readonly irradiance: Float64Array | null;
  /** Metered heat that warms the house [W], NaN where not known; null when none was metered. */
  readonly heatingPower: Float64Array | null;
  /** Relative standard deviation of the metered heat. */
  readonly heatingPowerSd: number;
}
