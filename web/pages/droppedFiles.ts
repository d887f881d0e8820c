/** Everything that was dropped, with the folders walked to their ends. */
import type { PathOf } from './houseFolder.ts';

/** A file or folder that the browser may not open. */
export class NotOpened extends Error {
  readonly path: string;
  constructor(path: string) {
    super(`“${path}” could not be opened.`);
    this.path = path;
  }
}

/**
 * To be called while the drop is being handled: afterwards the browser forgets what was dropped.
 *
 * @throws NotOpened
 */
export async function droppedFiles(transfer: DataTransfer): Promise<PathOf<File>[]> {
  const items = [...transfer.items].filter(({ kind }) => kind === 'file');
  const walks = items.map((item) => {
    const entry = item.webkitGetAsEntry();
    const file = item.getAsFile();
    if (entry !== null) return walk(entry);
    return Promise.resolve(file === null ? [] : [{ path: file.name, file }]);
  });
  return (await Promise.all(walks)).flat();
}

/** What was picked with a file or folder field. */
export const pickedFiles = (input: HTMLInputElement): PathOf<File>[] =>
  [...(input.files ?? [])].map((file) => ({ path: file.webkitRelativePath || file.name, file }));

async function walk(entry: FileSystemEntry): Promise<PathOf<File>[]> {
  if (isFile(entry)) {
    const file = await new Promise<File>((resolve, reject) =>
      entry.file(resolve, () => reject(new NotOpened(entry.fullPath))),
    );
    return [{ path: entry.fullPath.replace(/^\//, ''), file }];
  }
  if (!isFolder(entry)) return [];
  const reader = entry.createReader();
  const inside: FileSystemEntry[] = [];
  // A reader hands out a hundred at a time and nothing when it is done.
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) =>
      reader.readEntries(resolve, () => reject(new NotOpened(entry.fullPath))),
    );
    if (some.length === 0) break;
    inside.push(...some);
  }
  return (await Promise.all(inside.map(walk))).flat();
}

const isFile = (entry: FileSystemEntry): entry is FileSystemFileEntry => entry.isFile;
const isFolder = (entry: FileSystemEntry): entry is FileSystemDirectoryEntry => entry.isDirectory;
