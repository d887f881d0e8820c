/** What is posted to a house bit by bit: each logger's readings in few files. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { exportsOf, filesOf, type ReadingFiles, type Shelf, shelfOf } from '../../src/record/index.ts';
import { bytesOf, type FolderFile } from '../store/houseToStore.ts';
import { entriesOf, type JoinedChannel, joinedChannels } from '../store/joinedChannels.ts';
import { sha256 } from '../store/sha256.ts';
import { joinedText } from './joinedText.ts';
import type { Match } from './sameLogger.ts';
import type { BroughtFile } from './stagedFolder.ts';
import type { StoredBase } from './storedFolder.ts';

/**
 * A file of this size takes no more [bytes]: eleven days of one column every ten minutes. Each day keeps its own as it
 * then was, so that it can be undone: larger ones take more of the disk, more of them take longer to read.
 */
const FULL = 64 * 1024;

export interface Joined {
  readonly file: string;
  /** All files of the house, this one among them as it is then. */
  readonly files: ReadonlyMap<string, FolderFile>;
  readonly joined: FolderFile;
  /** Of `files`. */
  readonly shelf: Shelf;
}

interface Posted {
  /** A single file. */
  readonly brought: ReadonlyMap<string, BroughtFile>;
  readonly matches: ReadonlyMap<string, Match>;
  /** Has all files of the house and the one that is posted, as a later export of its logger. */
  readonly shelf: Shelf;
}

/**
 * A posted log joined into one of its logger that was posted before, where the house's readings are then those that it
 * has with the two apart; null where there is no such file.
 *
 * @param earlier the files that were posted before
 * @param into    a folder for the joined file
 */
export function joinedInto(
  earlier: readonly string[],
  { brought, matches, shelf }: Posted,
  { house, files }: StoredBase,
  into: string,
  how: ReadingFiles,
): Joined | null {
  if (earlier.length === 0) return null;
  const [[name, { bytes }]] = brought;
  const { kind, of = null } = matches.get(name) ?? {};
  if (kind !== 'continues' || of === null) return null;
  const naming = entriesOf(house).flatMap(({ entry }) => (filesOf(entry).includes(of) ? [entry] : []));
  // What stands above a header is of one export alone.
  if (naming.some((entry) => shelf.read(name, entry)?.understood.headerLine !== 1)) return null;
  const own = earlier.filter((it) => naming.every((entry) => filesOf(entry).includes(it)));
  for (const file of own) {
    const before = files.get(file);
    if (before === undefined || before.bytes.length >= FULL) continue;
    const text = joinedText(before.bytes, bytes);
    if (text === null) continue;
    const path = join(into, 'joined');
    const joined = { bytes: text, sha256: sha256(text), path };
    const all = new Map(files).set(file, joined);
    const then = shelfOf(house, bytesOf(all), how);
    const isSame = naming.every((entry) => {
      const apart = [...filesOf(entry), name].flatMap((it) => shelf.read(it, entry) ?? []);
      return areAlike(joinedChannels(apart, entry), joinedChannels(exportsOf(entry, then), entry));
    });
    if (!isSame) continue;
    mkdirSync(into, { recursive: true });
    writeFileSync(path, text);
    return { file, files: all, joined, shelf: then };
  }
  return null;
}

const areAlike = (some: readonly JoinedChannel[], others: readonly JoinedChannel[]): boolean =>
  some.length === others.length &&
  some.every((one, i) => {
    const other = others[i];
    return (
      one.column === other.column &&
      one.quantity === other.quantity &&
      areEqual(one.time, other.time) &&
      areEqual(one.value, other.value)
    );
  });

const areEqual = (some: Float64Array, others: Float64Array) =>
  some.length === others.length && some.every((value, i) => value === others[i]);
