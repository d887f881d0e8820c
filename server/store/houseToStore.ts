/** A house folder -> all that the store keeps of it: the reading of the logs, done before anything is written. */
import { createHash } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Quantity } from '../../src/assessment.ts';
import type { House, Logger } from '../../src/house.ts';
import type { LogChannel, readLog } from '../../src/logs/index.ts';
import { gatherRecord } from '../../src/record/index.ts';
import { spacingOf } from '../../src/series/steps.ts';
import { writeReadings } from './readingsFile.ts';

/** Files and readings stay on disk until they are stored: a year of many loggers is too much to pass about. */
export interface HouseToStore {
  readonly name: string;
  readonly timeZone: string;
  readonly json: Uint8Array;
  readonly content: string;
  readonly files: readonly {
    readonly name: string;
    readonly sha256: string;
    readonly bytes: number;
    readonly path: string;
  }[];
  readonly channels: readonly ChannelToStore[];
}

export interface ChannelToStore {
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
  /** Of its readings; see readingsFile.ts. */
  readonly path: string;
}

interface ReadFolder {
  readonly house: House;
  readonly json: Uint8Array;
  /** Those that `house` names, by their names in it. */
  readonly files: ReadonlyMap<string, Uint8Array>;
}

/**
 * @param paths where the files lie, by their names
 * @param into  a folder for the readings, made here
 * @param read  how a log is read
 */
export function houseToStore(
  { house, json, files }: ReadFolder,
  paths: ReadonlyMap<string, string>,
  into: string,
  read: typeof readLog,
): HouseToStore {
  const hashed = Array.from(files, ([name, bytes]) => ({
    name,
    sha256: sha256(bytes),
    bytes: bytes.length,
    path: paths.get(name) ?? '',
  }));
  mkdirSync(into, { recursive: true });
  return {
    name: house.name,
    timeZone: house.location.timeZone,
    json,
    content: sha256(
      JSON.stringify([sha256(json), ...hashed.map(({ name, sha256 }) => [name, sha256]).toSorted()]),
    ),
    files: hashed,
    channels: channelsOf(house, files, read).map(({ time, value, ...channel }, i) => {
      const path = join(into, String(i));
      writeReadings(path, { time, value });
      return { ...channel, first: time[0], last: time[time.length - 1], path };
    }),
  };
}

export const sha256 = (of: Uint8Array | string) => createHash('sha256').update(of).digest('hex');

type ChannelRead = Omit<ChannelToStore, 'first' | 'last' | 'path'> & Pick<LogChannel, 'time' | 'value'>;

/** Every channel of every file, each once, as the entry that names the file first has it read. */
function channelsOf(
  house: House,
  files: ReadonlyMap<string, Uint8Array>,
  readAs: typeof readLog,
): ChannelRead[] {
  const bare: House = { ...house, loggers: [], weather: [], heat: [] };
  // The record of one entry alone: without an inside logger it stops at the accounts of its files.
  const read = (entry: Partial<House>) =>
    gatherRecord({ ...bare, ...entry }, files, { read: readAs }).accounts.flatMap(({ file, reading }) =>
      reading.kind === 'read' ? reading.channels.map((channel) => ({ ...channel, file })) : [],
    );
  const seen = new Set<string>();
  const once =
    (room: string | null, place: ChannelToStore['place']) =>
    ({ file, column, quantity, time, value }: LogChannel & { readonly file: string }): ChannelRead[] => {
      const key = JSON.stringify([file, column, quantity]);
      if (seen.has(key)) return [];
      seen.add(key);
      return [{ file, column, room, place, quantity, spacing: spacingOf(time), time, value }];
    };
  return [
    ...house.loggers.flatMap((logger) =>
      read({ loggers: [{ ...logger, place: 'outside' }] }).flatMap(once(logger.room ?? null, logger.place)),
    ),
    ...(house.weather ?? []).flatMap((entry) => read({ weather: [entry] }).flatMap(once(null, 'weather'))),
    ...(house.heat ?? []).flatMap((entry) => read({ heat: [entry] }).flatMap(once(null, 'heat'))),
  ];
}
