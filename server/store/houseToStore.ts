/** A house folder -> all that the store keeps of it: the reading of the logs, done before anything is written. */
import { createHash } from 'node:crypto';
import type { Quantity } from '../../src/assessment.ts';
import type { House, Logger } from '../../src/house.ts';
import { gatherRecord, type LogChannel } from '../../src/logs/index.ts';
import type { Readings } from './dayBlob.ts';

export interface HouseToStore {
  readonly name: string;
  readonly timeZone: string;
  readonly json: Uint8Array;
  readonly content: string;
  readonly files: readonly {
    readonly name: string;
    readonly sha256: string;
    readonly bytes: Uint8Array;
  }[];
  readonly channels: readonly ChannelToStore[];
}

export interface ChannelToStore extends Readings {
  readonly file: string;
  readonly column: string;
  readonly room: string | null;
  readonly place: Logger['place'] | 'weather' | 'heat';
  readonly quantity: Quantity;
  /** Median step between readings [s]; 0 with a single one. */
  readonly spacing: number;
}

/** @param files those that `house` names, by their names in it; others are not to be among them */
export function houseToStore(
  json: Uint8Array,
  house: House,
  files: ReadonlyMap<string, Uint8Array>,
): HouseToStore {
  const hashed = Array.from(files, ([name, bytes]) => ({ name, sha256: sha256(bytes), bytes }));
  return {
    name: house.name,
    timeZone: house.location.timeZone,
    json,
    content: sha256(
      JSON.stringify([sha256(json), ...hashed.map(({ name, sha256 }) => [name, sha256]).toSorted()]),
    ),
    files: hashed,
    channels: channelsOf(house, files),
  };
}

export const sha256 = (of: Uint8Array | string) => createHash('sha256').update(of).digest('hex');

/** The files that a house names, each once. */
export function namedFiles({ loggers, weather = [], heat = [] }: House): string[] {
  const named = [...loggers, ...weather, ...heat].map(({ file }) => file);
  return [...new Set(named.filter((file) => file !== undefined))];
}

/** Every channel of every file, each once, as the entry that names the file first has it read. */
function channelsOf(house: House, files: ReadonlyMap<string, Uint8Array>): ChannelToStore[] {
  const bare: House = { ...house, loggers: [], weather: [], heat: [] };
  // The record of one entry alone: without an inside logger it stops at the account of the file.
  const read = (entry: Partial<House>): readonly LogChannel[] =>
    gatherRecord({ ...bare, ...entry }, files).accounts.flatMap(({ reading }) =>
      reading.kind === 'read' ? reading.channels : [],
    );
  const seen = new Set<string>();
  const once =
    (file: string | undefined, room: string | null, place: ChannelToStore['place']) =>
    (channel: LogChannel): ChannelToStore[] => {
      const key = JSON.stringify([file, channel.column, channel.quantity]);
      if (file === undefined || seen.has(key)) return [];
      seen.add(key);
      return [{ ...channel, file, room, place, spacing: medianStep(channel.time) }];
    };
  return [
    ...house.loggers.flatMap((logger) =>
      read({ loggers: [{ ...logger, place: 'outside' }] }).flatMap(
        once(logger.file, logger.room ?? null, logger.place),
      ),
    ),
    ...(house.weather ?? []).flatMap((entry) =>
      read({ weather: [entry] }).flatMap(once(entry.file, null, 'weather')),
    ),
    ...(house.heat ?? []).flatMap((entry) => read({ heat: [entry] }).flatMap(once(entry.file, null, 'heat'))),
  ];
}

function medianStep(time: Float64Array): number {
  const steps = time
    .subarray(1)
    .map((t, i) => t - time[i])
    .sort();
  return steps.length === 0 ? 0 : steps[steps.length >> 1];
}
