/**
 * The loggers that a change of a house's files touches. What the others' readings are does not hang on it, as long as
 * no file that changes tells them how they are read, and none of the touched ones asks them.
 */
import { isDeepStrictEqual } from 'node:util';
import type { House } from '../../src/house.ts';
import { type Entry, filesNamed, filesOf, type Shelf } from '../../src/record/index.ts';
import {
  channelsToStore,
  type HouseToStore,
  type ListedFolder,
  withoutReadings,
} from '../store/houseToStore.ts';
import { entriesOf } from '../store/joinedChannels.ts';
import type { StoredChannel } from '../store/reading.ts';

/** The house with those entries only that have one of these files, or share one with an entry that has. */
export function partWith(house: House, files: Iterable<string>): House {
  const wanted = new Set(files);
  const has = (entry: Entry) => filesOf(entry).some((file) => wanted.has(file));
  for (let before = -1; before < wanted.size; ) {
    before = wanted.size;
    for (const { entry } of entriesOf(house))
      if (has(entry)) for (const file of filesOf(entry)) wanted.add(file);
  }
  return {
    ...house,
    loggers: house.loggers.filter(has),
    ...(house.weather && { weather: house.weather.filter(has) }),
    ...(house.heat && { heat: house.heat.filter(has) }),
  };
}

/**
 * The files of the entries that differ between two versions of a house, and of all that share files with these.
 *
 * @param changed files that only one of them has, or each with other bytes
 * @returns null where the entries are not the same ones in the same order
 */
export function touchedFiles(
  now: House,
  then: House,
  changed: ReadonlySet<string>,
): ReadonlySet<string> | null {
  const [some, others] = [entriesOf(now), entriesOf(then)];
  if (some.length !== others.length || now.location.timeZone !== then.location.timeZone) return null;
  const touched = new Set(changed);
  some.forEach((one, i) => {
    if (isDeepStrictEqual(one, others[i])) return;
    for (const { entry } of [one, others[i]]) for (const file of filesOf(entry)) touched.add(file);
  });
  for (let before = -1; before < touched.size; ) {
    before = touched.size;
    for (const house of [now, then])
      for (const file of filesNamed(partWith(house, touched))) touched.add(file);
  }
  return touched;
}

/**
 * Whether the files of this part of a house are read as they are in the whole house, and the others as before.
 *
 * @param changed of its files those that come, go or become others
 */
export function isReadAlone(part: House, shelf: Shelf, changed: ReadonlySet<string>): boolean {
  return entriesOf(part).every(({ entry }) =>
    filesOf(entry).every((file) => {
      const reading = shelf.read(file, entry);
      if (reading === null) return false;
      const { understood, findings } = reading;
      const { order, orderBy } = understood.clock;
      const asks =
        orderBy === 'the other files' ||
        findings.some(({ code }) => code === 'date-order-unknown') ||
        (understood.columns.some(({ quantity, unitStated }) => quantity === 'temperature' && !unitStated) &&
          findings.every(({ code }) => code !== 'temperature-unit-guessed'));
      const tells =
        (orderBy === 'the whole file' && order !== 'year-first') ||
        findings.some((it) => it.code === 'temperature-unit-guessed' && it.taken === 'F');
      return !asks && !(tells && changed.has(file));
    }),
  );
}

/** A part of a house with its files as they then are. */
interface Part {
  readonly part: House;
  readonly shelf: Shelf;
  /** The files that it has then or has now. */
  readonly files: ReadonlySet<string>;
  /** The channels of the whole house as they are stored. */
  readonly stored: readonly StoredChannel[];
  /** A folder for the readings, made here. */
  readonly into: string;
}

/**
 * The whole house to be stored: the channels of the part as they are read, the others as they are stored.
 *
 * @returns null where other channels are stored of the part than it has now
 */
export function storedByPart(
  whole: ListedFolder,
  { part, shelf, files, stored, into }: Part,
): HouseToStore | null {
  const read = channelsToStore(part, shelf, into);
  const own = stored.filter(({ file }) => files.has(file));
  const areTheSame =
    own.length === read.length &&
    own.every(({ file, column, quantity }, i) => {
      const now = read[i];
      return now.file === file && now.column === column && now.quantity === quantity;
    });
  if (!areTheSame) return null;
  const now = new Map(own.map(({ number }, i) => [number, read[i]]));
  const channels = stored.map(({ number, ...channel }) => now.get(number) ?? { ...channel, path: null });
  return { ...withoutReadings(whole), channels };
}
