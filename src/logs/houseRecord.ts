/** A house's files -> its record on one grid, with an account of every file. */
import type { Quantity, Where } from '../assessment.ts';
import type { HeatEntry, House, Logger, WeatherFile } from '../house.ts';
import { type Grid, gridOver } from '../series/grid.ts';
import type { HouseRecord, RoomSeries } from '../series/record.ts';
import { resample } from '../series/resample.ts';
import { weightedMean } from '../series/weightedMean.ts';
import { instantOf } from '../sky/zone.ts';
import { heatingPowerOf } from './heat.ts';
import type { LogChannel, LogFinding, LogHints, LogReading } from './log.ts';
import { findHeader } from './names.ts';
import { readLog } from './readLog.ts';

export type RecordFinding = { readonly where: Where } & (
  | { readonly code: 'file-missing' }
  | { readonly code: 'no-temperature-in-file' }
  /** Fewer than two readings remain: nothing can be laid on a grid. */
  | { readonly code: 'logger-too-short' }
  | {
      readonly code: 'several-columns-first-taken';
      readonly quantity: Quantity;
      readonly columns: readonly string[];
    }
  | { readonly code: 'no-heat-in-file'; readonly kind: string }
  /** Readings further apart than two hours, or outside the record: no night and no day can be told from them. */
  | { readonly code: 'heat-not-usable' }
  | { readonly code: 'meter-ran-backwards'; readonly count: number }
  | { readonly code: 'outside-from-weather' }
  | { readonly code: 'key-not-used-yet' }
);

/** One file as it was read. */
export interface FileAccount {
  readonly file: string;
  readonly reading: LogReading;
}

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

/** Readings further apart than this are a gap, unless the logger itself is slower [s]. */
const LONGEST_STEP = 3600;

/** Reads every file that `house.json` names and lays all loggers on one grid over the span of the inside ones. */
export function gatherRecord(house: House, files: ReadonlyMap<string, Uint8Array>): Gathered {
  const findings: (RecordFinding | LogFinding)[] = notUsedYet(house);
  const shelf = shelfOf(house, files, findings);

  const loggers = house.loggers.flatMap((logger, i) => {
    const reading = shelf.read(logger, `loggers[${i}]`);
    const channel = reading && pick(reading, 'temperature', logger, findings);
    if (reading !== null && channel === null)
      findings.push({ code: 'no-temperature-in-file', where: { file: logger.file } });
    if (!reading || !channel) return [];
    const temperature = kept(channel, logger, house);
    if (temperature.time.length < 2) {
      findings.push({ code: 'logger-too-short', where: { file: logger.file, key: `loggers[${i}]` } });
      return [];
    }
    const humidity = pick(reading, 'humidity', logger, []);
    return [{ logger, channel: temperature, humidity: humidity && kept(humidity, logger, house) }];
  });
  const weather = (house.weather ?? []).flatMap((entry, i) => {
    const reading = shelf.read(entry, `weather[${i}]`);
    return reading === null ? [] : [{ entry, reading }];
  });
  const heat = (house.heat ?? []).flatMap((entry, i): { entry: HeatEntry; channel: LogChannel | null }[] => {
    if (entry.file === undefined) return [{ entry, channel: null }];
    const reading = shelf.read({ ...entry, file: entry.file }, `heat[${i}]`);
    const channel = reading && pick(reading, entry.kind ?? 'power', { ...entry, file: entry.file }, findings);
    if (reading !== null && channel === null)
      findings.push({ code: 'no-heat-in-file', kind: entry.kind ?? 'power', where: { file: entry.file } });
    return channel ? [{ entry, channel }] : [];
  });

  const inside = loggers.filter(({ logger }) => logger.place === 'inside');
  const rest = { accounts: shelf.accounts(), findings };
  if (inside.length === 0) return { kind: 'no record', missing: 'inside', ...rest };
  const grid = gridOver(
    Math.min(...inside.map(({ channel }) => channel.time[0])),
    Math.max(...inside.map(({ channel }) => channel.time[channel.time.length - 1])),
  );
  const onGrid = (channel: LogChannel) => resample(channel.time, channel.value, grid, longestGap(channel));

  const rooms = loggers.map(
    ({ logger, channel, humidity }): RoomSeries => ({
      file: logger.file,
      room: logger.room ?? logger.file,
      place: logger.place,
      temperature: onGrid(channel),
      relativeHumidity: humidity ? onGrid(humidity) : null,
    }),
  );
  const from = (place: Logger['place']) => rooms.filter((room) => room.place === place);
  const outside = from('outside').map(({ temperature }) => temperature);
  const weatherSeries = (quantity: Quantity) =>
    weather.flatMap(({ entry, reading }) => {
      const channel = pick(reading, quantity, entry, findings);
      return channel ? [onGrid(centred(channel, entry))] : [];
    });
  const outsideTemperature = firstKnown(grid, [
    ...(outside.length > 0
      ? [
          weightedMean(
            outside,
            outside.map(() => 1),
          ),
        ]
      : []),
    ...weatherSeries('temperature'),
  ]);
  if (outsideTemperature.every(Number.isNaN)) return { kind: 'no record', missing: 'outside', ...rest };
  if (outside.length === 0) findings.push({ code: 'outside-from-weather', where: { key: 'weather' } });

  const wind = weatherSeries('windSpeed');
  const irradiance = weatherSeries('irradiance');
  return {
    kind: 'record',
    record: {
      grid,
      rooms,
      insideTemperature: weightedMean(
        from('inside').map(({ temperature }) => temperature),
        volumes(
          house,
          inside.map(({ logger }) => logger),
        ),
      ),
      outsideTemperature,
      insideResolution: Math.max(...inside.map(({ channel }) => resolutionOf(channel.value))),
      windSpeed: wind.length > 0 ? firstKnown(grid, wind) : null,
      irradiance: irradiance.length > 0 ? firstKnown(grid, irradiance) : null,
      ...heatingPowerOf(heat, grid, house.location.timeZone, findings),
    },
    ...rest,
  };
}

type ReadFile = LogReading & { readonly kind: 'read' };

/** Reads each file once for each way of reading it, and keeps the account of the first. */
function shelfOf(
  house: House,
  files: ReadonlyMap<string, Uint8Array>,
  findings: (RecordFinding | LogFinding)[],
) {
  const readings = new Map<string, LogReading>();
  const missing = new Set<string>();
  const read = (entry: Entry & { file: string }, key: string): ReadFile | null => {
    const bytes = files.get(entry.file);
    if (bytes === undefined) {
      if (!missing.has(entry.file)) findings.push({ code: 'file-missing', where: { file: entry.file, key } });
      missing.add(entry.file);
      return null;
    }
    const hints = hintsOf(entry, house.location.timeZone);
    const way = `${entry.file}\n${JSON.stringify(hints)}`;
    const before = readings.get(way);
    const reading = before ?? readLog(entry.file, bytes, hints);
    readings.set(way, reading);
    if (before === undefined)
      findings.push(
        ...(reading.kind === 'unreadable' ? reading.findings : reading.findings.filter(isQuestion)),
      );
    return reading.kind === 'read' ? reading : null;
  };
  const accounts = (): FileAccount[] => {
    const byFile = new Map<string, LogReading>();
    for (const reading of readings.values())
      byFile.set(reading.file, merged(byFile.get(reading.file), reading));
    return Array.from(byFile, ([file, reading]) => ({ file, reading }));
  };
  return { read, accounts };
}

/** One file read in two ways (other columns named) has the columns of both. */
function merged(first: LogReading | undefined, second: LogReading): LogReading {
  if (first === undefined || first.kind === 'unreadable') return second;
  if (second.kind === 'unreadable') return first;
  const known = new Set(first.channels.map(({ column }) => column));
  return {
    ...first,
    channels: [...first.channels, ...second.channels.filter(({ column }) => !known.has(column))],
  };
}

/** What the file does not say and the person should: told aloud and not only in the file's own account. */
const isQuestion = ({ code }: LogFinding): boolean => questions.has(code);
const questions: ReadonlySet<LogFinding['code']> = new Set([
  'column-not-found',
  'date-order-unknown',
  'doubled-hour-once',
  'local-time-missing',
  'quantity-guessed',
  'temperature-unit-guessed',
]);

type Entry = Logger | WeatherFile | HeatEntry;

function hintsOf(entry: Entry, houseZone: string): LogHints {
  const heat = 'kind' in entry ? entry : null;
  return {
    timeZone: entry.timeZone ?? houseZone,
    clockOffset: (entry.clockOffsetMin ?? 0) * 60,
    columns: entry.columns ?? {},
    dateOrder: entry.read?.dateOrder,
    decimal: entry.read?.decimal,
    temperatureUnit: entry.read?.unit,
    expected: heat?.kind,
    energyPerUnit: heat?.kWhPerUnit === undefined ? undefined : heat.kWhPerUnit * 3.6e6,
  };
}

/**
 * The column that the house names for a quantity, else the only one that holds it; of several the first, unless the
 * house names columns of this file for other quantities and so has chosen not to name this one.
 */
function pick(
  reading: ReadFile,
  quantity: Quantity,
  entry: Entry & { file: string },
  findings: (RecordFinding | LogFinding)[],
): LogChannel | null {
  const holding = reading.channels.filter((channel) => channel.quantity === quantity);
  const wanted = columnNamed(entry, quantity);
  const named =
    wanted === undefined
      ? -1
      : findHeader(
          holding.map(({ column }) => column),
          wanted,
        );
  if (named >= 0) return holding[named];
  if (holding.length > 1 && namesQuantities(entry)) return null;
  if (holding.length > 1)
    findings.push({
      code: 'several-columns-first-taken',
      quantity,
      columns: holding.map(({ column }) => column),
      where: { file: entry.file },
    });
  return holding[0] ?? null;
}

const namesQuantities = ({ columns }: Entry) =>
  Object.keys(columns ?? {}).some((key) => key !== 'time' && key !== 'date');

const columnNamed = ({ columns }: Entry, quantity: Quantity): string | undefined =>
  Object.entries(columns ?? {}).find(([key]) => key === quantity)?.[1];

/** The logger's readings with its offset added and what was left out by hand taken away. */
function kept(channel: LogChannel, logger: Logger, house: House): LogChannel {
  const spans = (logger.leaveOut ?? []).map(({ from, to }) => ({
    from: instantOf(from, house.location.timeZone),
    to: instantOf(to, house.location.timeZone),
  }));
  const offset = channel.quantity === 'temperature' ? (logger.temperatureOffsetK ?? 0) : 0;
  const stays = Array.from(channel.time, (t) => !spans.some(({ from, to }) => t >= from && t <= to));
  return centred(
    {
      ...channel,
      time: channel.time.filter((_, i) => stays[i]),
      value: channel.value.filter((_, i) => stays[i]).map((v) => v + offset),
    },
    logger,
  );
}

/**
 * Interval means moved to the middle of their interval. Loggers take instants unless the house says how they are
 * stamped; weather comes as means stamped at their end unless it says otherwise.
 */
function centred(channel: LogChannel, entry: Logger | WeatherFile): LogChannel {
  const stamp = entry.read?.stamp ?? ('place' in entry ? null : 'end');
  if (stamp === null) return channel;
  const half = spacingOf(channel.time) / 2;
  return { ...channel, time: channel.time.map((t) => (stamp === 'end' ? t - half : t + half)) };
}

const longestGap = (channel: LogChannel) => Math.max(LONGEST_STEP, 2.5 * spacingOf(channel.time));

/** Median spacing [s]; 0 with a single reading. */
export function spacingOf(time: Float64Array): number {
  const steps = time
    .subarray(1)
    .map((t, i) => t - time[i])
    .sort();
  return steps.length === 0 ? 0 : steps[steps.length >> 1];
}

/** The smallest step between values that occurs [same unit]; 0 where every value is the same. */
export function resolutionOf(values: Float64Array): number {
  const sorted = values.slice().sort();
  let smallest = Number.POSITIVE_INFINITY;
  for (let i = 1; i < sorted.length; i++) {
    const step = sorted[i] - sorted[i - 1];
    if (step > 1e-6 && step < smallest) smallest = step;
  }
  return Number.isFinite(smallest) ? smallest : 0;
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

/** At each cell the first of the series that has a value. */
function firstKnown(grid: Grid, series: readonly Float64Array[]): Float64Array {
  return Float64Array.from(
    { length: grid.length },
    (_, i) => series.find((it) => !Number.isNaN(it[i]))?.[i] ?? Number.NaN,
  );
}

/** Keys that the contract has and no room reads yet: said, not passed over in silence. */
function notUsedYet(house: House): RecordFinding[] {
  const keys = [
    ...(house.coLocation ? ['coLocation'] : []),
    ...Object.keys(house.conditions ?? {}).flatMap((key) =>
      key === 'ventsClosed' ? [] : [`conditions.${key}`],
    ),
    ...house.loggers.flatMap(({ putBack }, i) => (putBack ? [`loggers[${i}].putBack`] : [])),
  ];
  return keys.map((key) => ({ code: 'key-not-used-yet', where: { key } }));
}
