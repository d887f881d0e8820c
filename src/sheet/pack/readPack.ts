/** The bytes of a zip -> a house folder, with what its hashes say; or why nothing of it is taken. */
import type { Message } from '../../assessment.ts';
import { readHashList } from './hashList.ts';
import { HASHES, isOfPack, PACK_FORMAT, VERSIONS } from './names.ts';
import { otherVersion } from './otherVersion.ts';
import * as refusals from './refusals.ts';
import { unzipped } from './unzip.ts';

export type PackReading =
  | {
      readonly kind: 'pack';
      /** `house.json` and the raw files, by the names of the house folder. */
      readonly files: ReadonlyMap<string, Uint8Array>;
      /** All files of the zip, by their paths from the house folder. */
      readonly all: ReadonlyMap<string, Uint8Array>;
      /** "Stillwarm 0.3.0"; null for a plain house folder, of which no hash says anything. */
      readonly software: string | null;
      /** What to tell the person when another version than this one made it; null when it did not. */
      readonly otherVersion: Message | null;
    }
  | { readonly kind: 'refused'; readonly problems: readonly Message[] };

/** The most that may come out of a pack [bytes]. */
export const LARGEST = 1 << 30;

/**
 * @param sha256 of bytes, hexadecimal
 * @param own    the software that reads it, "Stillwarm 0.3.0"
 */
export async function readPack(
  bytes: Uint8Array,
  sha256: (bytes: Uint8Array) => Promise<string>,
  own: string,
  largest: number = LARGEST,
): Promise<PackReading> {
  const zip = unzipped(bytes, largest);
  if (zip.kind === 'refused') return refused(zip.problem);
  const root = rootOf([...zip.files.keys()]);
  if (root === null) return refused(refusals.noHouse);
  const all = new Map<string, Uint8Array>();
  for (const [path, content] of zip.files)
    if (path.startsWith(root)) all.set(path.slice(root.length), content);

  const software = softwareOf(all, own);
  if (typeof software === 'object' && software !== null) return refused(software);
  const problems = software === null ? [] : await changes(all, sha256);
  if (problems.length > 0) return { kind: 'refused', problems };
  const files = new Map([...all].filter(([name]) => software === null || !isOfPack(name)));
  return {
    kind: 'pack',
    files,
    all,
    software,
    otherVersion: software === null ? null : otherVersion(software, own),
  };
}

const refused = (problem: Message): PackReading => ({ kind: 'refused', problems: [problem] });

/** Where house.json lies: at the root, or in the one folder that has it. */
function rootOf(paths: readonly string[]): string | null {
  if (paths.includes(HOUSE)) return '';
  const folders = paths.filter((path) => path.split('/').length === 2 && path.endsWith(`/${HOUSE}`));
  return folders.length === 1 ? folders[0].slice(0, -HOUSE.length) : null;
}
const HOUSE = 'house.json';

/** Null for a plain house folder; a message for a pack that is laid out in a way not known here. */
function softwareOf(all: ReadonlyMap<string, Uint8Array>, own: string): string | Message | null {
  const text = textOf(all, VERSIONS);
  if (text === null) return all.has(HASHES) ? refusals.fileMissing(VERSIONS) : null;
  const stated = versionsIn(text);
  if (stated === null) return refusals.fileChanged(VERSIONS);
  return stated.pack > PACK_FORMAT ? refusals.newer(stated.software, own) : stated.software;
}

function versionsIn(text: string): { pack: number; software: string } | null {
  try {
    const { pack, software } = Object(JSON.parse(text)) as { pack?: unknown; software?: unknown };
    return typeof pack === 'number' && typeof software === 'string' ? { pack, software } : null;
  } catch {
    return null;
  }
}

/** What is not as it was packed. */
async function changes(
  all: ReadonlyMap<string, Uint8Array>,
  sha256: (bytes: Uint8Array) => Promise<string>,
): Promise<Message[]> {
  const text = textOf(all, HASHES);
  if (text === null) return [refusals.fileMissing(HASHES)];
  const hashes = readHashList(text);
  if (hashes === null) return [refusals.fileChanged(HASHES)];
  const problems = [...hashes.keys()].filter((name) => !all.has(name)).map(refusals.fileMissing);
  for (const [name, content] of all) {
    if (name === HASHES) continue;
    const hash = hashes.get(name);
    if (hash === undefined) problems.push(refusals.fileAdded(name));
    else if (hash !== (await sha256(content))) problems.push(refusals.fileChanged(name));
  }
  return problems;
}

function textOf(all: ReadonlyMap<string, Uint8Array>, name: string): string | null {
  const bytes = all.get(name);
  return bytes === undefined ? null : new TextDecoder().decode(bytes);
}
