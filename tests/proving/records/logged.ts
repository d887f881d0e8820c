/** What the loggers and the weather station of one run make of it, on the grid of a record. */
import { type Grid, timeAt } from '../../../src/series/grid.ts';
import type { HouseRecord, RoomSeries } from '../../../src/series/record.ts';
import { resample, resampleIntervalMeans } from '../../../src/series/resample.ts';
import { weightedMean } from '../../../src/series/weightedMean.ts';
import { type LoggerKind, ordinaryLogger, readLogger } from '../loggers.ts';
import { voidName } from '../plan.ts';
import { wander } from '../weather.ts';
import { hour } from './calendar.ts';
import { drawsOf } from './draws.ts';
import type { HouseRun } from './houseRun.ts';

/** A logger as it hangs in the house, and what it truly hangs in. */
export interface HungLogger {
  readonly file: string;
  readonly room: string;
  readonly place: RoomSeries['place'];
  /** Of its room; for weighting those inside [m³]. */
  readonly volume: number;
  readonly element?: string;
  /** What air and walls make it, and what the air of the room is, at every step of the run [°C]. */
  readonly felt: Float64Array;
  readonly air: Float64Array;
}

/** In each room, outside, under the roof and at a neighbour's, as far as they are laid. */
export function loggersOf(house: HouseRun): HungLogger[] {
  const { plan, type, run, weather, neighbours, ownSeed } = house;
  const draws = drawsOf(ownSeed, 'loggers');
  const throwback = draws.between(0.0005, 0.003); // what the ground throws back of the sun [K per W/m²]
  const oneMissing = plan.rooms.length > 2 && draws.chance(0.25);
  const voidLogged = draws.chance(0.5);
  const inside = plan.rooms.flatMap((room, z): HungLogger[] => {
    const wall = draws.between(0, 0.4);
    if (oneMissing && room.name === 'Kitchen') return [];
    const air = run.airTemperature[z];
    const felt = air.map((it, k) => it + wall * (run.radiantTemperature[z][k] - it));
    return [
      { file: `${fileOf(room.name)}`, room: room.name, place: 'inside', volume: room.volume, felt, air },
    ];
  });
  const outside = weather.airTemperature;
  const atNeighbours = type.neighbourLogged === true ? neighbours : [];
  return [
    ...inside,
    {
      file: 'outside.csv',
      room: 'Outside',
      place: 'outside',
      volume: 1,
      felt: outside.map((it, k) => it + throwback * weather.global[k]),
      air: outside,
    },
    ...(plan.roofVoid !== undefined && voidLogged
      ? [
          {
            file: fileOf(voidName),
            room: voidName,
            place: 'void' as const,
            volume: 1,
            element: plan.roofVoid.over,
            felt: run.airTemperature[plan.rooms.length],
            air: run.airTemperature[plan.rooms.length],
          },
        ]
      : []),
    ...atNeighbours.map((air, i) => ({
      file: `next-door${i === 0 ? '' : `-${i + 1}`}.csv`,
      room: 'Next door',
      place: 'adjacent' as const,
      volume: 1,
      felt: air,
      air,
    })),
  ];
}

const fileOf = (room: string) => `${room.toLowerCase().replaceAll(' ', '-')}.csv`;

export type Seen = Pick<
  HouseRecord,
  'grid' | 'rooms' | 'insideTemperature' | 'outsideTemperature' | 'differenceSd' | 'insideResolution'
>;

/** The temperatures of a record as the loggers give them, and as they were. */
export function seenBy(loggers: readonly HungLogger[], house: HouseRun, grid: Grid) {
  const kind = kindOf(house.ownSeed);
  const clocks = drawsOf(house.ownSeed, 'clocks');
  const logged = loggers.map((logger) => {
    const clockError = 60 * Math.min(8, Math.max(-8, 2.5 * clocks.source.normal()));
    return readings(logger, { ...kind, clockError }, house, grid);
  });
  const known = loggers.map(({ air }) => onGrid(air, house.run, grid));
  const resolution = kind.resolution;
  return {
    seen: together(loggers, logged, grid, resolution),
    noiseFree: together(loggers, known, grid, resolution),
  };
}

/** All loggers of a house are bought together: one kind, each with its own bias and clock. */
function kindOf(ownSeed: number): LoggerKind {
  const draws = drawsOf(ownSeed, 'logger kind');
  return {
    ...ordinaryLogger,
    timeConstant: draws.between(2, 20) * 60,
    biasDeviation: draws.between(0.15, 0.2),
    noise: draws.between(0.01, 0.06),
    resolution: draws.oneOf([0.1, 0.1, 0.1, 0.2, 0.5]),
    interval: draws.oneOf([300, 600, 600, 900, 1800]),
  };
}

function readings({ room, felt }: HungLogger, kind: LoggerKind, { ownSeed, run }: HouseRun, grid: Grid) {
  const trace = {
    start: run.start,
    step: run.step,
    temperature: felt,
    relativeHumidity: felt.map(() => 0.5),
  };
  const to = Math.min(timeAt(grid, grid.length) + hour, run.start + (felt.length - 1) * run.step - hour / 4);
  const read = readLogger(ownSeed, room, kind, trace, grid.start - hour, to);
  const time = Float64Array.from(read, (it) => it.time);
  return resample(
    time,
    Float64Array.from(read, (it) => it.temperature),
    grid,
    hour,
  );
}

function onGrid(values: Float64Array, { start, step }: { start: number; step: number }, grid: Grid) {
  const time = Float64Array.from(values, (_, k) => start + k * step);
  return resample(time, values, grid, hour);
}

function together(
  loggers: readonly HungLogger[],
  temperatures: readonly Float64Array[],
  grid: Grid,
  resolution: number,
): Seen {
  const rooms = loggers.map(
    ({ file, room, place }, k): RoomSeries => ({
      file,
      room,
      place,
      temperature: temperatures[k],
      relativeHumidity: null,
    }),
  );
  const inside = loggers.flatMap(({ place, volume }, k) => (place === 'inside' ? [{ k, volume }] : []));
  const outside = loggers.findIndex(({ place }) => place === 'outside');
  const volume = inside.reduce((sum, it) => sum + it.volume, 0);
  const sd = 0.2; // what `record/loggers.ts` takes a generic logger to be off [K]
  return {
    grid,
    rooms,
    insideTemperature: weightedMean(
      inside.map(({ k }) => temperatures[k]),
      inside.map((it) => it.volume),
    ),
    outsideTemperature: temperatures[outside],
    differenceSd: Math.hypot(sd, ...inside.map((it) => (sd * it.volume) / volume)),
    insideResolution: resolution,
  };
}

/** Hourly means of a station some way off: its wind and sun are much like those at the house. */
export function stationOf(house: HouseRun, grid: Grid) {
  const { weather, ownSeed } = house;
  const draws = drawsOf(ownSeed, 'station');
  const windFactor = draws.between(0.75, 1.25);
  const sunFactor = draws.scatter(0.04);
  const away = wander(draws.source, weather.global.length, weather.step, 2 * hour, 0.5 * hour);
  const hourly = (value: (k: number) => number) => {
    const perHour = hour / weather.step;
    const hours = Math.floor((weather.global.length - 1) / perHour);
    const time = Float64Array.from({ length: hours }, (_, i) => weather.start + (i + 1) * hour);
    const means = time.map((_, i) => {
      let sum = 0;
      for (let k = i * perHour + 1; k <= (i + 1) * perHour; k++) sum += value(k);
      return sum / perHour;
    });
    return resampleIntervalMeans(time, means, grid, 2 * hour, 'end');
  };
  return {
    windSpeed: hourly((k) => windFactor * weather.windSpeed[k]),
    irradiance: hourly((k) => sunFactor * weather.global[k] * Math.max(0, 1 + 0.12 * away[k])),
  };
}

/** Heat that the meter counts within the span, on the grid [W]; its scale is off a little. */
export function meteredPower({ run, ownSeed }: HouseRun, grid: Grid, value: (k: number) => number) {
  const scale = drawsOf(ownSeed, 'heat meter').scatter(0.01);
  const time = Float64Array.from(run.metered, (_, k) => run.start + k * run.step);
  return resampleIntervalMeans(
    time,
    time.map((_, k) => scale * value(k)),
    grid,
    hour,
    'end',
  );
}
