/** A house without what names it or those who live there: other names, no notes, the place only roughly. */
import { reportedUnits } from '../../src/assessment.ts';
import type { House, Logger } from '../../src/house.ts';
import type { StoredChannel } from '../store/reading.ts';

export interface NamelessFile {
  readonly name: string;
  /** Each under its heading, in the order of the columns. */
  readonly columns: readonly { readonly heading: string; readonly channel: StoredChannel }[];
}

export interface NamelessHouse {
  readonly house: House;
  readonly files: readonly NamelessFile[];
}

export const TIME = 'Time';

/**
 * Names of materials, areas, times and what a person decided by hand stay; reasons, notes and every other name go.
 *
 * @param channels all that are stored of it: the readings are written anew, for an original may name its owner
 */
export function nameless(house: House, channels: readonly StoredChannel[]): NamelessHouse {
  const files = filesOf(channels);
  const byOldName = new Map(files.map(({ old, file }) => [old, file]));
  const element = numbered('Element');
  const room = numbered('Room');
  const stage = numbered('Stage');

  /** What tells how an entry's files are read, for the one that is written; nothing where none could be read. */
  const readAs = <E extends Entry>(
    entry: E,
  ): Omit<E, (typeof OF_OLD_FILES)[number]> & Pick<Logger, 'columns'> => {
    const rest = { ...entry };
    for (const key of OF_OLD_FILES) delete rest[key];
    const file = entry.file === undefined ? undefined : byOldName.get(entry.file);
    if (file === undefined) return rest;
    const stamp = entry.read?.stamp;
    return {
      ...rest,
      file: file.name,
      timeZone: 'UTC',
      columns: columnsFor(entry, file),
      ...(stamp === undefined ? {} : { read: { stamp } }),
    };
  };
  const isThere = ({ file }: { file?: string | undefined }) => file === undefined || byOldName.has(file);

  const { notes: _, limits, thermalBridges, ...rest } = house;
  const named: House = {
    ...rest,
    ...(limits === undefined ? {} : { limits: { ...limits, name: 'Limits' } }),
    ...(thermalBridges === undefined ? {} : { thermalBridges: withoutNames(thermalBridges) }),
    name: 'A house',
    location: {
      ...house.location,
      latitude: roughly(house.location.latitude),
      longitude: roughly(house.location.longitude),
    },
    loggers: house.loggers.filter(isThere).map((it) => ({
      ...readAs(it),
      ...(it.room === undefined ? {} : { room: room(it.room) }),
      ...(it.element === undefined ? {} : { element: element(it.element) }),
    })),
    ...withList('weather', house.weather?.filter(isThere).map(readAs)),
    ...withList('heat', house.heat?.filter(isThere).map(readAs)),
    ...withList(
      'stages',
      house.stages?.map((it) => ({
        ...it,
        name: stage(it.name),
        ...withList('missing', it.missing?.map(element)),
      })),
    ),
    ...withList(
      'elements',
      house.elements?.map((it) => ({
        ...it,
        name: element(it.name),
        ...(it.room === undefined ? {} : { room: room(it.room) }),
      })),
    ),
    ...withList(
      'partitions',
      house.partitions?.map((it, i) => ({ ...it, name: `Partition ${i + 1}` })),
    ),
  };
  return { house: withoutReasons(named) as House, files: files.map(({ file }) => file) };
}

type Entry = Partial<
  Pick<Logger, 'file' | 'columns' | 'read' | 'timeZone' | 'clockOffsetMin' | 'continuedIn'>
> & {
  unit?: unknown;
  kWhPerUnit?: unknown;
};
/** They speak of the files as they were brought. */
const OF_OLD_FILES = [
  'continuedIn',
  'columns',
  'timeZone',
  'clockOffsetMin',
  'read',
  'unit',
  'kWhPerUnit',
] as const;

function filesOf(channels: readonly StoredChannel[]) {
  const olds = [...new Set(channels.map(({ file }) => file))];
  return olds.map((old, i) => {
    const own = channels.filter(({ file }) => file === old);
    const columns = own.map((channel, k) => ({ heading: headingOf(channel, k), channel }));
    return { old, file: { name: `logger ${i + 1}.csv`, columns } };
  });
}

/** "Temperature 1 (C)" */
const headingOf = ({ quantity }: StoredChannel, i: number) =>
  `${quantity.charAt(0).toUpperCase()}${quantity.slice(1)} ${i + 1} (${reportedUnits[quantity]})`;

const READ_BY_COLUMN = [
  'temperature',
  'humidity',
  'windSpeed',
  'irradiance',
  'power',
  'energy',
  'meter',
] as const;

/** The column that the entry named, or the only one of its quantity. */
function columnsFor({ columns: named = {} }: Entry, { columns }: NamelessFile): Logger['columns'] {
  const found = READ_BY_COLUMN.flatMap((quantity) => {
    const like = columns.filter(({ channel }) => channel.quantity === quantity);
    const column = like.find(({ channel }) => channel.column === named[quantity]) ?? like[0];
    return column === undefined ? [] : [[quantity, column.heading]];
  });
  return { time: TIME, ...Object.fromEntries(found) };
}

/** The same other name for the same name. */
function numbered(what: string): (name: string) => string {
  const known = new Map<string, string>();
  return (name) => {
    const other = known.get(name) ?? `${what} ${known.size + 1}`;
    known.set(name, other);
    return other;
  };
}

/** A junction need not have a name. */
const withoutNames = ({ junctions, ...bridges }: NonNullable<House['thermalBridges']>) => ({
  ...bridges,
  ...withList(
    'junctions',
    junctions?.map(({ name: _, ...junction }) => junction),
  ),
});

/** To a tenth of a degree: some 10 km. */
const roughly = (degrees: number) => Math.round(degrees * 10) / 10;

const withList = <K extends string, T>(key: K, list: readonly T[] | undefined) =>
  list === undefined ? {} : ({ [key]: [...list] } as { [it in K]: T[] });

/** What a person wrote down why, wherever it stands. */
function withoutReasons(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutReasons);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, it]) => (REASONS.includes(key) ? [] : [[key, withoutReasons(it)]])),
  );
}
const REASONS = ['why', 'note'];
