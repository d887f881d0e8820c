/** A house folder -> all that the store keeps of it: the reading of the logs, done before anything is written. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import type { Quantity } from '../../src/assessment.ts';
import type { House, Logger } from '../../src/house.ts';
import type { readLog } from '../../src/logs/index.ts';
import { exportsOf, type Shelf, shelfOf } from '../../src/record/index.ts';
import { spacingOf } from '../../src/series/steps.ts';
import { contentOf, figuresOf } from './contentOf.ts';
import { entriesOf, type JoinedChannel, joinedChannels } from './joinedChannels.ts';
import { type Layout, layoutsOf } from './layout.ts';
import { writeReadings } from './readingsFile.ts';

/** Files and readings stay on disk until they are stored: a year of many loggers is too much to pass about. */
export interface HouseToStore {
  readonly name: string;
  readonly timeZone: string;
  readonly json: Uint8Array;
  readonly content: string;
  /** See contentOf.ts, both. */
  readonly figures: string;
  readonly files: readonly FileToStore[];
  /** Null when they are those of the stored house that this one is a change of. */
  readonly channels: readonly ChannelToStore[] | null;
  readonly layouts: readonly Layout[];
}

export interface FileToStore {
  readonly name: string;
  readonly sha256: string;
  readonly bytes: number;
  /** Null for one whose bytes are stored. */
  readonly path: string | null;
}

export interface ChannelToStore {
  /** The first of its files. */
  readonly file: string;
  readonly column: string;
  readonly room: string | null;
  readonly place: Logger['place'] | 'weather' | 'heat';
  readonly quantity: Quantity;
  /** Median step between readings [s]; 0 with a single one. */
  readonly spacing: number;
  /** Bounds of its readings [s]. */
  readonly first: number;
  readonly last: number;
  /** Of its readings, see readingsFile.ts; null for one whose readings are stored as they are. */
  readonly path: string | null;
}

/** A file of a house folder, in memory. */
export interface FolderFile {
  readonly bytes: Uint8Array;
  readonly sha256: string;
  /** Where it waits to be stored; null when it is. */
  readonly path: string | null;
}

export interface ReadFolder {
  readonly house: House;
  readonly json: Uint8Array;
  /** Those that `house` names, by their names in it. */
  readonly files: ReadonlyMap<string, FolderFile>;
}

/** A folder without the bytes of its files. */
export interface ListedFolder {
  readonly house: House;
  readonly json: Uint8Array;
  readonly files: readonly FileToStore[];
}

/**
 * @param into a folder for the readings, made here
 * @param read how a log is read
 */
export function houseToStore(
  { house, json, files }: ReadFolder,
  into: string,
  read: typeof readLog,
): HouseToStore {
  const shelf = shelfOf(house, bytesOf(files), { read });
  return {
    ...unreadHouse({ house, json, files }),
    channels: channelsToStore(house, shelf, into),
    layouts: layoutsOf(house, shelf),
  };
}

/** A house whose readings are stored already: none of its files is read. */
export const unreadHouse = ({ house, json, files }: ReadFolder): HouseToStore =>
  withoutReadings({
    house,
    json,
    files: Array.from(files, ([name, { bytes, ...file }]) => ({ name, bytes: bytes.length, ...file })),
  });

/** The same for files that are only listed. */
export function withoutReadings({ house, json, files }: ListedFolder): HouseToStore {
  return {
    name: house.name,
    timeZone: house.location.timeZone,
    json,
    content: contentOf(json, files),
    figures: figuresOf(house, files),
    files,
    channels: null,
    layouts: [],
  };
}

/** @param into a folder for the readings, made here */
export function channelsToStore(house: House, shelf: Shelf, into: string): ChannelToStore[] {
  mkdirSync(into, { recursive: true });
  return channelsOf(house, shelf).map(({ time, value, doubt, ...channel }, i) => {
    const path = join(into, String(i));
    writeReadings(path, { time, value, doubt });
    return { ...channel, first: time[0], last: time[time.length - 1], path };
  });
}

/** Whether two houses have the same files read in the same way into the same places. */
export const readAlike = (one: House, other: House): boolean =>
  isDeepStrictEqual(readingIn(one), readingIn(other));

const readingIn = ({ location, loggers, weather = [], heat = [] }: House) => [
  location.timeZone,
  loggers,
  weather,
  heat.filter(({ file }) => file !== undefined),
];

export const bytesOf = (files: ReadonlyMap<string, FolderFile>): ReadonlyMap<string, Uint8Array> =>
  new Map(Array.from(files, ([name, { bytes }]) => [name, bytes]));

type ChannelRead = Omit<ChannelToStore, 'first' | 'last' | 'path'> &
  Pick<JoinedChannel, 'time' | 'value' | 'doubt'>;

/** Every channel of every logger, each column of a file once, as the entry that names the file first has it read. */
function channelsOf(house: House, shelf: Shelf): ChannelRead[] {
  const seen = new Set<string>();
  return entriesOf(house).flatMap(({ entry, room, place }) =>
    joinedChannels(exportsOf(entry, shelf), entry).flatMap((channel): ChannelRead[] => {
      const { file, column, quantity, time, value, doubt } = channel;
      const key = JSON.stringify([file, column, quantity]);
      if (seen.has(key)) return [];
      seen.add(key);
      return [{ file, column, room, place, quantity, spacing: spacingOf(time), time, value, doubt }];
    }),
  );
}
