/** A house's files -> its record on one grid, with an account of every file. */
import type { Quantity } from '../assessment.ts';
import type { House, Logger } from '../house.ts';
import type { LogChannel, LogFinding } from '../logs/index.ts';
import { type Grid, gridOver } from '../series/grid.ts';
import { layingOnce } from '../series/laying.ts';
import type { HouseRecord, RoomSeries } from '../series/record.ts';
import { resolutionOf } from '../series/steps.ts';
import { weightedMean } from '../series/weightedMean.ts';
import type { RecordFinding } from './finding.ts';
import { heatingPowerOf, heatReadings } from './heat.ts';
import { expectedHeat } from './heatUnit.ts';
import { LOGGER_SD, type LoggerReadings, loggersOf } from './loggers.ts';
import { centred, channelOf, exportsOf, trusted } from './readings.ts';
import { sensesOf } from './senses.ts';
import { type FileAccount, type ReadingFiles, shelfOf } from './shelf.ts';
import { withoutOffsets } from './sideBySide.ts';

export type Gathered =
  | {
      readonly kind: 'record';
      readonly record: HouseRecord;
      readonly accounts: readonly FileAccount[];
      readonly findings: readonly (RecordFinding | LogFinding)[];
    }
  | {
      readonly kind: 'no record';
      readonly missing: 'inside' | 'outside';
      readonly accounts: readonly FileAccount[];
      readonly findings: readonly (RecordFinding | LogFinding)[];
    };

/**
 * Reads every file that `house.json` names and lays all loggers on one grid over the span of the inside ones. Where
 * none was inside but the house states a constant temperature, over that of the heat, and nothing is known inside.
 */
export function gatherRecord(
  house: House,
  files: ReadonlyMap<string, Uint8Array>,
  how: ReadingFiles = {},
): Gathered {
  const shelf = shelfOf(house, files, how);
  const findings: (RecordFinding | LogFinding)[] = [...shelf.findings];
  const rest = { accounts: shelf.accounts, findings };

  const loggers = withoutOffsets(loggersOf(house, shelf, findings), house, findings);
  const inside = loggers.filter(({ logger }) => logger.place === 'inside');
  const { insideC } = house.conditions ?? {};
  if (inside.length === 0 && insideC === undefined) return { kind: 'no record', missing: 'inside', ...rest };
  if (inside.length > 0 && insideC !== undefined)
    findings.push({ code: 'inside-logged', stated: insideC, where: { key: 'conditions.insideC' } });
  const weather = (house.weather ?? []).map((entry) => ({ entry, exports: exportsOf(entry, shelf) }));
  const weatherChannels = (quantity: Quantity) =>
    weather.map(({ entry, exports }) => {
      const channel = channelOf(exports, quantity, entry, findings);
      return channel && centred(trusted(channel), entry);
    });
  const warm = weatherChannels('temperature');
  const heat = heatReadings(house, shelf, findings);
  const outsiders = loggers.filter(({ logger }) => logger.place === 'outside');
  const grid = gridOfFirst([
    inside.map(({ temperature }) => temperature),
    heat.map(({ channel }) => channel),
    [...outsiders.map(({ temperature }) => temperature), ...warm],
  ]);
  if (grid === null) return { kind: 'no record', missing: 'outside', ...rest };
  const lay = layingOnce();
  const onGrid = (channel: LogChannel) => lay(channel, grid);

  const rooms = loggers.map(
    ({ logger, temperature, humidity }): RoomSeries => ({
      file: logger.file,
      room: logger.room ?? logger.file,
      place: logger.place,
      temperature: onGrid(temperature),
      relativeHumidity: humidity ? onGrid(humidity) : null,
    }),
  );
  const from = (place: Logger['place']) =>
    rooms.filter((room) => room.place === place).map(({ temperature }) => temperature);
  const outside = from('outside');
  const sun = weatherChannels('irradiance');
  const seen = weather.map(({ entry }, k) => ({ entry, temperature: warm[k], irradiance: sun[k] }));
  findings.push(...sensesOf(house, loggers, seen, lay));
  const allOnGrid = (channels: readonly (LogChannel | null)[]) =>
    channels.flatMap((channel) => (channel === null ? [] : [onGrid(channel)]));
  const outsideTemperature = firstKnown(grid, [
    ...(outside.length > 0 ? [evenMean(outside)] : []),
    ...allOnGrid(warm),
  ]);
  if (outsideTemperature.every(Number.isNaN)) return { kind: 'no record', missing: 'outside', ...rest };
  if (outside.length === 0) findings.push({ code: 'outside-from-weather', where: { key: 'weather' } });

  const wind = allOnGrid(weatherChannels('windSpeed'));
  const irradiance = allOnGrid(sun);
  const weights = volumes(
    house,
    inside.map(({ logger }) => logger),
  );
  const insideTemperature =
    inside.length > 0
      ? weightedMean(from('inside'), weights)
      : new Float64Array(grid.length).fill(Number.NaN);
  const expected = expectedHeat(house, meanDifference(insideTemperature, outsideTemperature, insideC));
  return {
    kind: 'record',
    record: {
      grid,
      rooms,
      insideTemperature,
      outsideTemperature,
      differenceSd: Math.hypot(meanSd(inside, weights), outsideSd(outsiders)),
      insideResolution: Math.max(0, ...inside.map(({ temperature }) => resolutionOf(temperature.value))),
      windSpeed: wind.length > 0 ? firstKnown(grid, wind) : null,
      irradiance: irradiance.length > 0 ? firstKnown(grid, irradiance) : null,
      ...heatingPowerOf(heat, grid, house.location.timeZone, expected, findings),
    },
    ...rest,
  };
}

/** Weights of the inside loggers: their volumes; those without share what is left of the house's. */
function volumes(house: House, inside: readonly Logger[]): number[] {
  const stated = inside.reduce((sum, { volumeM3 }) => sum + (volumeM3 ?? 0), 0);
  const without = inside.filter(({ volumeM3 }) => volumeM3 === undefined).length;
  const withVolume = inside.length - without;
  const left = (house.volumeM3 ?? 0) - stated;
  const share = left > 0 ? left / without : withVolume > 0 ? stated / withVolume : 1;
  return inside.map(({ volumeM3 }) => volumeM3 ?? share);
}

/** Standard deviation of a weighted mean of loggers that are off independently [K]. */
function meanSd(loggers: readonly LoggerReadings[], weights: readonly number[]): number {
  const sum = weights.reduce((all, weight) => all + weight, 0);
  return Math.hypot(...loggers.map(({ temperatureSd }, k) => (temperatureSd * weights[k]) / sum));
}

/** Of a station elsewhere nobody knows the error; it is taken for a logger's. */
const outsideSd = (outside: readonly LoggerReadings[]) =>
  outside.length === 0
    ? LOGGER_SD
    : meanSd(
        outside,
        outside.map(() => 1),
      );

const evenMean = (series: readonly Float64Array[]) =>
  weightedMean(
    series,
    series.map(() => 1),
  );

/** At each cell the first of the series that has a value. */
function firstKnown(grid: Grid, series: readonly Float64Array[]): Float64Array {
  return Float64Array.from(
    { length: grid.length },
    (_, i) => series.find((it) => !Number.isNaN(it[i]))?.[i] ?? Number.NaN,
  );
}

/** Over the channels of the first group that has any; null where none has. */
function gridOfFirst(groups: readonly (readonly (LogChannel | null)[])[]): Grid | null {
  for (const group of groups) {
    const times = group.flatMap((channel) =>
      channel !== null && channel.time.length > 1 ? [channel.time] : [],
    );
    if (times.length > 0)
      return gridOver(
        Math.min(...times.map((time) => time[0])),
        Math.max(...times.map((time) => time[time.length - 1])),
      );
  }
  return null;
}

/** Inside, or the constant that stands for it, less outside [K]; NaN where they never meet. */
function meanDifference(inside: Float64Array, outside: Float64Array, insideC: number | undefined): number {
  const known = inside
    .map((it, i) => (Number.isNaN(it) ? (insideC ?? Number.NaN) : it) - outside[i])
    .filter((it) => !Number.isNaN(it));
  return known.reduce((sum, it) => sum + it, 0) / known.length;
}
