/** Files as a person drops or picks them -> the files of a house folder, by the paths that house.json names. */

export interface PathOf<File> {
  /** With the folders it came in, parted by "/". */
  readonly path: string;
  readonly file: File;
}

/**
 * The house folder begins where the uppermost house.json lies; without one, inside the folder that all files share.
 * Files that the computer keeps for itself (hidden ones) are left out; house.json comes first, so that what it says
 * is known early.
 */
export function houseFolder<File>(found: readonly PathOf<File>[]): PathOf<File>[] {
  const visible = found.filter(({ path }) => path.split('/').every((part) => !/^\.|^__MACOSX$/.test(part)));
  const root = rootOf(visible.map(({ path }) => path));
  return visible
    .map(({ path, file }) => ({ path: path.startsWith(root) ? path.slice(root.length) : path, file }))
    .toSorted((a, b) => rank(a.path) - rank(b.path) || a.path.localeCompare(b.path));
}

const rank = (path: string) => (path === 'house.json' ? 0 : 1);
const depth = (path: string) => path.split('/').length;

function rootOf(paths: readonly string[]): string {
  const houses = paths
    .filter((path) => /(^|\/)house\.json$/.test(path))
    .toSorted((a, b) => depth(a) - depth(b));
  if (houses.length > 0) return houses[0].slice(0, -'house.json'.length);
  const folders = new Set(
    paths.map((path) => (path.includes('/') ? path.slice(0, path.indexOf('/') + 1) : '')),
  );
  return folders.size === 1 ? [...folders][0] : '';
}
