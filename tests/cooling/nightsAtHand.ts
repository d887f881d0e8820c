/** Invented records for tests: a room of one time constant, heated to a set temperature by day. */
import { gridOver, timeAt } from '../../src/series/grid.ts';
import type { HouseRecord, RoomSeries } from '../../src/series/record.ts';
import { nightsBetween } from '../../src/sky/nights.ts';

export const place = { latitude: 52, longitude: -1, timeZone: 'UTC' };
export const HOUR = 3600;
export const midnight = Date.UTC(2027, 0, 10) / 1000;

export interface Shape {
  readonly days?: number;
  readonly timeConstant?: number;
  /** Outdoor temperature at an instant [°C]. */
  readonly outside?: (t: number) => number;
  /** Set temperature; the heating is on from 07:00 to 20:00. */
  readonly warm?: number;
  /** Last word on the inside temperature, by instant; NaN makes a gap. */
  readonly inside?: (t: number, temperature: number) => number;
  readonly heatingPower?: (t: number) => number;
  readonly irradiance?: (t: number) => number;
  /** Loggers of their own, from the instant and the inside temperature. */
  readonly rooms?: readonly {
    readonly room: string;
    readonly place: RoomSeries['place'];
    readonly temperature: (t: number, inside: number) => number;
  }[];
  /** Of the loggers [K]. */
  readonly resolution?: number;
}

/** A record from noon on; exactly one exponential from 20:00 on each evening to 07:00. */
export function recordOf(shape: Shape = {}): HouseRecord {
  const { days = 3, timeConstant = 40 * HOUR, outside = () => 5, warm = 20, inside = (_, it) => it } = shape;
  const start = midnight + 12 * HOUR;
  const grid = gridOver(start, start + days * 24 * HOUR);
  const times = Float64Array.from({ length: grid.length }, (_, i) => timeAt(grid, i));
  let temperature = warm;
  const body = times.map((t) => {
    const hour = ((t - midnight) / HOUR) % 24;
    if (hour >= 7 && hour <= 20) temperature = warm;
    else temperature = outside(t) + (temperature - outside(t)) * Math.exp(-grid.step / timeConstant);
    return temperature;
  });
  return {
    grid,
    rooms: (shape.rooms ?? []).map(({ room, place, temperature }) => ({
      file: `${room}.csv`,
      room,
      place,
      temperature: body.map((it, i) => temperature(times[i], it)),
      relativeHumidity: null,
    })),
    insideTemperature: body.map((it, i) => inside(times[i], it)),
    outsideTemperature: times.map(outside),
    differenceSd: 0,
    insideResolution: shape.resolution ?? 0.01,
    windSpeed: null,
    irradiance: shape.irradiance ? times.map(shape.irradiance) : null,
    heatingPower: shape.heatingPower ? times.map(shape.heatingPower) : null,
    heatingPowerSd: 0.02,
  };
}

export const nightsOf = ({ grid }: HouseRecord) =>
  nightsBetween(grid.start, timeAt(grid, grid.length - 1), place);
