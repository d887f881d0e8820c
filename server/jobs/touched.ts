/**
 * The loggers that a change of a house's files touches. What the others' readings are does not hang on it, as long as
 * the touched ones tell them the same about how they are read, and ask them nothing.
 */
import { isDeepStrictEqual } from 'node:util';
import type { House } from '../../src/house.ts';
import { type Entry, filesNamed, filesOf, type ReadFile, type Shelf } from '../../src/record/index.ts';
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
 * What the files of a part of a house tell the rest about how they are read: as long as that is the same before and after
 * a change of the part, the rest is read as before.
 *
 * @returns null where a file of the part cannot be read, or asks the rest how it is
 */
export function toldByPart(part: House, shelf: Shelf): string | null {
  const told = new Set<string>();
  for (const { entry } of entriesOf(part))
    for (const file of filesOf(entry)) {
      const reading = shelf.read(file, entry);
      if (reading === null || asksOthers(reading)) return null;
      const { order, orderBy } = reading.understood.clock;
      if (orderBy === 'the whole file' && order !== 'year-first') told.add(`${order}`);
      if (reading.findings.some((it) => it.code === 'temperature-unit-guessed' && it.taken === 'F'))
        told.add('F');
    }
  return [...told].sort().join();
}

const asksOthers = ({ understood: { clock, columns }, findings }: ReadFile) =>
  clock.orderBy === 'the other files' ||
  findings.some(({ code }) => code === 'date-order-unknown') ||
  (columns.some(({ quantity, unitStated }) => quantity === 'temperature' && !unitStated) &&
    findings.every(({ code }) => code !== 'temperature-unit-guessed'));

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
