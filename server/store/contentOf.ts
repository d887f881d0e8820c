/** Hashes of a house: of all that it is, and of all that its figures rest on. */
import type { House } from '../../src/house.ts';
import { sha256 } from './sha256.ts';

interface NamedHash {
  readonly name: string;
  readonly sha256: string;
}

/**
 * Keys of house.json that no figure and no sentence of the assessment rests on, but for the name at its head. The limits
 * are shown beside the elements where these are edited, and nowhere else.
 */
const WORDS_ONLY: readonly (keyof House)[] = ['name', 'notes', 'limits'];

/** The same for the same house.json, byte for byte, and the same files under the same names, and only then. */
export const contentOf = (json: Uint8Array, files: readonly NamedHash[]): string =>
  sha256(JSON.stringify([sha256(json), ...hashesOf(files)]));

/** The same whenever an assessment comes out the same for certain: whatever the name, the notes, the white space. */
export const figuresOf = (house: House, files: readonly NamedHash[]): string => {
  const rest = Object.entries(house).filter(([key]) => !WORDS_ONLY.some((words) => words === key));
  return sha256(JSON.stringify([rest, ...hashesOf(files)]));
};

const hashesOf = (files: readonly NamedHash[]) => files.map(({ name, sha256 }) => [name, sha256]).toSorted();
