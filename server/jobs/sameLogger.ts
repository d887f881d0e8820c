/** Which stored logger a file that was brought onto its house is a later export of. */
import type { House } from '../../src/house.ts';
import type { LogChannel } from '../../src/logs/index.ts';
import { type Entry, exportsOf, filesOf, type ReadFile, type Shelf } from '../../src/record/index.ts';
import type { FileChange } from '../api/shapes.ts';
import type { FolderFile } from '../store/houseToStore.ts';
import { counterpart, entriesOf, joinedChannels } from '../store/joinedChannels.ts';
import type { BroughtFile } from './stagedFolder.ts';

export type Match = Pick<FileChange, 'kind' | 'of'>;

/**
 * @param house  as it is stored
 * @param stored its files
 * @param shelf  has the file read as if it belonged to each logger
 */
export function matchOf(
  name: string,
  { sentAs, sha256 }: BroughtFile,
  house: House,
  stored: ReadonlyMap<string, FolderFile>,
  shelf: Shelf,
): Match {
  // Two loggers may well send the same few bytes: then the name tells them apart.
  const own = entriesOf(house).flatMap(({ entry }) => {
    const files = filesOf(entry);
    return files.includes(sentAs) ? files : [];
  });
  for (const [of, file] of stored)
    if (file.sha256 === sha256 && (own.length === 0 || own.includes(of))) return { kind: 'same', of };
  const candidates = entriesOf(house).flatMap(({ entry }) => {
    const brought = shelf.read(name, entry);
    const files = filesOf(entry).filter((file) => stored.has(file));
    if (brought === null || files.length === 0) return [];
    const exports = exportsOf(entry, shelf).filter(({ file }) => stored.has(file));
    return [{ of: files[0], files, exports, agreement: agreementOf(exports, entry, brought), brought }];
  });
  const possible = candidates.filter(({ agreement }) => !speaksAgainst(agreement));
  const only = (found: typeof possible): Match | null => {
    const loggers = new Set(found.map(({ of }) => of));
    return loggers.size === 1 ? { kind: 'continues', of: found[0].of } : null;
  };
  return (
    only(possible.filter(({ files }) => files.includes(sentAs))) ??
    only(possible.filter(({ exports, brought }) => exports.some((it) => isOfOneSerial(it, brought)))) ??
    only(possible.filter(({ agreement }) => speaksFor(agreement))) ?? { kind: 'new', of: null }
  );
}

const isOfOneSerial = (one: ReadFile, other: ReadFile) =>
  one.understood.preamble.serial !== null &&
  one.understood.preamble.serial === other.understood.preamble.serial;

/** How the readings of two records agree where both have one. */
interface Agreement {
  readonly common: number;
  readonly equal: number;
  /** How many different values are among the equal ones. */
  readonly different: number;
}

/** A few instants may agree by chance, and so may a rest, during which every logger shows the same. */
const speaksFor = ({ common, equal, different }: Agreement) =>
  common >= 10 && equal >= 0.9 * common && different >= 3;
/** Many loggers call their export "data.csv", and some tell the serial of their base station for their own. */
const speaksAgainst = ({ common, equal }: Agreement) => common >= 10 && equal < 0.5 * common;

function agreementOf(exports: readonly ReadFile[], entry: Entry, brought: ReadFile): Agreement {
  const stored = joinedChannels(exports, entry);
  const values = new Set<number>();
  let [common, equal] = [0, 0];
  for (const channel of brought.channels) {
    const own = counterpart(channel, brought.channels, stored);
    if (own === null) continue;
    forCommon(own, channel, (i, j) => {
      common++;
      if (own.value[i] !== channel.value[j]) return;
      equal++;
      values.add(channel.value[j]);
    });
  }
  return { common, equal, different: values.size };
}

/** Calls back for every instant that both have, with its place in each. */
export function forCommon(a: LogChannel, b: LogChannel, at: (i: number, j: number) => void): void {
  let [i, j] = [0, 0];
  while (i < a.time.length && j < b.time.length) {
    if (a.time[i] === b.time[j]) at(i++, j++);
    else if (a.time[i] < b.time[j]) i++;
    else j++;
  }
}
