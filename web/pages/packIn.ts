/** Whether what a person gives is a handover pack, or a whole house folder as a zip: a house by itself. */
import { zipEntries } from '../../src/logs/zip.ts';
import { HASHES, VERSIONS } from '../../src/sheet/pack/names.ts';
import type { PathOf } from './houseFolder.ts';

/** The one zip that is; null where what was given goes the way of loggers' files. */
export async function packIn(found: readonly PathOf<File>[]): Promise<File | null> {
  const [only] = found;
  if (found.length !== 1 || !/\.zip$/i.test(only.path)) return null;
  // One that cannot be read is told of on the usual way.
  const bytes = await only.file.arrayBuffer().catch(() => new ArrayBuffer(0));
  return holdsHouse(new Uint8Array(bytes)) ? only.file : null;
}

/** By the names alone: also of a pack that will be refused. */
export const holdsHouse = (zip: Uint8Array): boolean =>
  (zip.length < SHORTEST ? null : zipEntries(zip))?.some(({ name }) =>
    OF_A_HOUSE.some((it) => endsWith(name, it)),
  ) ?? false;

const OF_A_HOUSE = ['house.json', VERSIONS, HASHES];
const SHORTEST = 22; // the end record alone [bytes]

const endsWith = (path: string, name: string) => path === name || path.endsWith(`/${name}`);
