/** Invented records for tests: rooms with time constants of their own, a void between house and outdoors, wind by night. */
import { absoluteHumidity, vapourPressure } from '../../src/air/index.ts';
import { judgeNights, roomsCooling, type StageNights } from '../../src/cooling/index.ts';
import { designOf } from '../../src/fabric/index.ts';
import { type WhereToLook, whereToLook } from '../../src/gap/index.ts';
import type { SurfaceHint } from '../../src/heatloss/index.ts';
import type { House } from '../../src/house.ts';
import { gridOver, timeAt } from '../../src/series/grid.ts';
import type { HouseRecord, RoomSeries } from '../../src/series/record.ts';
import { nightsBetween } from '../../src/sky/nights.ts';

export const HOUR = 3600;
const DAY = 24 * HOUR;
const midnight = Date.UTC(2027, 0, 10) / 1000;
const location = { latitude: 52, longitude: -1, timeZone: 'UTC' };
const WARM = 20;

export interface Shape {
  readonly nights?: number;
  /** [°C] */
  readonly outside?: number;
  /** Time constant of each room in each night [s]. */
  readonly rooms: Readonly<Record<string, (night: number) => number>>;
  /** What a room is heated to [°C]; 20 where it is left out. */
  readonly warm?: Readonly<Record<string, number>>;
  /** Temperature index of the void in each night [–]. */
  readonly void?: (night: number) => number;
  /** [m/s] */
  readonly wind?: (night: number) => number;
  /** Added to each reading [K]. */
  readonly noise?: () => number;
  readonly differenceSd?: number;
  /** Vapour of the void and of the rooms above that outdoors [kg/m³]. */
  readonly moister?: { readonly void: number; readonly rooms: number };
}

/** From noon on: each room falls from what it is heated to at 19:00 to 07:00, and is warm by day. Rooms are of one size. */
export function recordOf(shape: Shape): HouseRecord {
  const { nights = 12, outside = 4, noise = () => 0, moister } = shape;
  const start = midnight + 12 * HOUR;
  const grid = gridOver(start, start + nights * DAY);
  const cells = Array.from({ length: grid.length }, (_, i) => i);
  const night = (i: number) => Math.min(nights - 1, Math.floor((timeAt(grid, i) - start) / DAY));
  const since = (i: number) => ((timeAt(grid, i) - midnight - 19 * HOUR) % DAY) / HOUR;
  const fallen = (i: number) => (since(i) >= 0 && since(i) <= 12 ? since(i) * HOUR : 0);
  const inside = Object.entries(shape.rooms).map(([room, timeConstant]) => ({
    room,
    exact: cells.map((i) => {
      const warm = shape.warm?.[room] ?? WARM;
      return outside + (warm - outside) * Math.exp(-fallen(i) / timeConstant(night(i)));
    }),
  }));
  const noisy = inside.map(({ room, exact }) => ({ room, temperature: exact.map((it) => it + noise()) }));
  const mean = cells.map((i) => noisy.reduce((sum, it) => sum + it.temperature[i] / noisy.length, 0));
  const index = shape.void;
  const humid = (temperature: Float64Array, more: number) =>
    moister === undefined
      ? null
      : temperature.map((it) => {
          const outdoors = absoluteHumidity(outside, vapourPressure(outside, 0.8));
          return (outdoors + more) / absoluteHumidity(it, vapourPressure(it, 1));
        });
  const series = (room: string, place: RoomSeries['place'], values: readonly number[], more = 0) => {
    const temperature = Float64Array.from(values);
    return {
      file: `${room}.csv`,
      room,
      place,
      temperature,
      relativeHumidity: humid(temperature, more),
    };
  };
  return {
    grid,
    rooms: [
      ...noisy.map(({ room, temperature }) => series(room, 'inside', temperature, moister?.rooms)),
      series(
        'Outside',
        'outside',
        cells.map(() => outside),
      ),
      ...(index === undefined
        ? []
        : [
            series(
              'Loft',
              'void',
              cells.map((i) => outside + index(night(i)) * (mean[i] - outside) + noise()),
              moister?.void,
            ),
          ]),
    ],
    insideTemperature: Float64Array.from(mean),
    outsideTemperature: Float64Array.from(cells, () => outside),
    differenceSd: shape.differenceSd ?? 0,
    insideResolution: 0.01,
    windSpeed: shape.wind === undefined ? null : Float64Array.from(cells.map(night), shape.wind),
    irradiance: null,
    heatingPower: null,
    heatingPowerSd: 0.02,
  };
}

/** Rooms of one size; what else the house has comes with `more`. */
export const houseOf = (rooms: readonly string[], more: Partial<House> = {}): House => ({
  name: 'Invented',
  location,
  volumeM3: 100 * rooms.length,
  floorAreaM2: 40 * rooms.length,
  loggers: [
    ...rooms.map((room) => ({
      file: `${room}.csv`,
      place: 'inside' as const,
      room,
      volumeM3: 100,
    })),
    { file: 'Outside.csv', place: 'outside', room: 'Outside' },
    { file: 'Loft.csv', place: 'void', room: 'Loft' },
  ],
  ...more,
});

export function looked(
  house: House,
  record: HouseRecord,
  surfaces: readonly SurfaceHint[] = [],
): WhereToLook {
  const end = timeAt(record.grid, record.grid.length - 1);
  const nights = judgeNights(record, nightsBetween(record.grid.start, end, location));
  const stage: StageNights = {
    name: 'All',
    from: record.grid.start,
    to: end,
    complete: true,
    missing: [],
    nights,
    crossing: [],
  };
  const design = designOf(house);
  return whereToLook({
    house,
    record,
    design,
    heatLossAsDrawn: design?.heatLoss ?? null,
    neighbour: null,
    stage,
    rooms: roomsCooling(record, nights),
    surfaces,
  });
}
