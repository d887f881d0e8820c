/** A house's files -> its record on one grid, with an account of every file. */
import type { Quantity } from '../assessment.ts';
import type { HeatEntry, House, Logger } from '../house.ts';
import type { LogChannel, LogFinding } from '../logs/index.ts';
import { type Grid, gridOver } from '../series/grid.ts';
import type { HouseRecord, RoomSeries } from '../series/record.ts';
import { resample } from '../series/resample.ts';
import { longestStepOf, resolutionOf } from '../series/steps.ts';
import { weightedMean } from '../series/weightedMean.ts';
import type { RecordFinding } from './finding.ts';
import { heatingPowerOf } from './heat.ts';
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

/** Reads every file that `house.json` names and lays all loggers on one grid over the span of the inside ones. */
export function gatherRecord(
  house: House,
  files: ReadonlyMap<string, Uint8Array>,
  how: ReadingFiles = {},
): Gathered {
  const shelf = shelfOf(house, files, how);
  const findings: (RecordFinding | LogFinding)[] = [...notUsedYet(house), ...shelf.findings];
  const rest = { accounts: shelf.accounts, findings };

  const loggers = withoutOffsets(loggersOf(house, shelf, findings), house, findings);
  const inside = loggers.filter(({ logger }) => logger.place === 'inside');
  if (inside.length === 0) return { kind: 'no record', missing: 'inside', ...rest };
  const grid = gridOver(
    Math.min(...inside.map(({ temperature }) => temperature.time[0])),
    Math.max(...inside.map(({ temperature }) => temperature.time[temperature.time.length - 1])),
  );
  const onGrid = (channel: LogChannel) =>
    resample(channel.time, channel.value, grid, longestStepOf(channel.time));

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
  const weather = (house.weather ?? []).map((entry) => ({ entry, exports: exportsOf(entry, shelf) }));
  const weatherChannels = (quantity: Quantity) =>
    weather.map(({ entry, exports }) => {
      const channel = channelOf(exports, quantity, entry, findings);
      return channel && centred(trusted(channel), entry);
    });
  const warm = weatherChannels('temperature');
  const sun = weatherChannels('irradiance');
  const seen = weather.map(({ entry }, k) => ({ entry, temperature: warm[k], irradiance: sun[k] }));
  findings.push(...sensesOf(house, loggers, seen));
  const allOnGrid = (channels: readonly (LogChannel | null)[]) =>
    channels.flatMap((channel) => (channel === null ? [] : [onGrid(channel)]));
  const outsideTemperature = firstKnown(grid, [
    ...(outside.length > 0 ? [evenMean(outside)] : []),
    ...allOnGrid(warm),
  ]);
  if (outsideTemperature.every(Number.isNaN)) return { kind: 'no record', missing: 'outside', ...rest };
  if (outside.length === 0) findings.push({ code: 'outside-from-weather', where: { key: 'weather' } });

  const heat = (house.heat ?? []).flatMap((entry): { entry: HeatEntry; channel: LogChannel | null }[] => {
    if (entry.file === undefined) return [{ entry, channel: null }];
    const exports = exportsOf(entry, shelf);
    const kind = entry.kind ?? 'power';
    const channel = channelOf(exports, kind, entry, findings);
    if (channel !== null) return [{ entry, channel: trusted(channel) }];
    if (exports.length > 0) findings.push({ code: 'no-heat-in-file', kind, where: { file: entry.file } });
    return [];
  });
  const wind = allOnGrid(weatherChannels('windSpeed'));
  const irradiance = allOnGrid(sun);
  const weights = volumes(
    house,
    inside.map(({ logger }) => logger),
  );
  const outsiders = loggers.filter(({ logger }) => logger.place === 'outside');
  return {
    kind: 'record',
    record: {
      grid,
      rooms,
      insideTemperature: weightedMean(from('inside'), weights),
      outsideTemperature,
      differenceSd: Math.hypot(meanSd(inside, weights), outsideSd(outsiders)),
      insideResolution: Math.max(...inside.map(({ temperature }) => resolutionOf(temperature.value))),
      windSpeed: wind.length > 0 ? firstKnown(grid, wind) : null,
      irradiance: irradiance.length > 0 ? firstKnown(grid, irradiance) : null,
      ...heatingPowerOf(heat, grid, house.location.timeZone, findings),
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

/** Keys that the contract has and no room reads yet: said, not passed over in silence. */
function notUsedYet(house: House): RecordFinding[] {
  const keys = Object.keys(house.conditions ?? {}).flatMap((key) =>
    key === 'ventsClosed' || key === 'neighbour' ? [] : [`conditions.${key}`],
  );
  return keys.map((key) => ({ code: 'key-not-used-yet', where: { key } }));
}
