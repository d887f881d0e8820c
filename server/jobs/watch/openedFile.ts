/** The bytes of a file of a watched folder, as long as it stays what it was when it was found. */
import { constants } from 'node:fs';
import { type FileHandle, open, realpath } from 'node:fs/promises';
import { isAbsolute, join, relative, sep } from 'node:path';
import { ReadableStream } from 'node:stream/web';
import { Refused, refused } from '../../refused.ts';
import { type FoundFile, stampOf } from './filesIn.ts';

/** Of a refusal that passes: the file is looked at again. */
export const FILE_CHANGED = 'file-changed';

/**
 * Opened when it is first read from; the stream breaks off with a Refused when the file cannot be read, is gone or a
 * link, lies elsewhere by now, or was changed since it was found.
 */
export function openedFile(watched: string, { path, stamp }: FoundFile): ReadableStream {
  const at = join(watched, path);
  const isSame = async (file: FileHandle) =>
    isWithin(await realpath(at), await realpath(watched)) && stampOf(await file.stat()) === stamp;
  async function* bytes() {
    let file: FileHandle | null = null;
    try {
      file = await open(at, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0));
      if (!(await isSame(file))) throw changedMeanwhile(path);
      yield* file.createReadStream({ autoClose: false });
      if (!(await isSame(file))) throw changedMeanwhile(path);
    } catch (error) {
      if (error instanceof Refused) throw error;
      throw isGone(error) ? changedMeanwhile(path) : notReadable(error);
    } finally {
      await file?.close();
    }
  }
  return ReadableStream.from(bytes());
}

/** Of a whole drive, too, whose path ends in a separator. */
function isWithin(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

const isGone = (error: unknown) =>
  error instanceof Error && 'code' in error && ['ENOENT', 'ELOOP', 'ENOTDIR'].includes(String(error.code));

const changedMeanwhile = (file: string) =>
  new Refused(409, [
    {
      code: FILE_CHANGED,
      text: 'This file was changed or taken away while it was read; nothing of it was stored.',
      where: { file },
      remedy: 'It is read once it is there and stands still.',
    },
  ]);

/** Of the machine, not of the file: what was not allowed, or a drive that was gone, may be there again. */
const notReadable = (error: unknown) =>
  refused(
    503,
    'file-not-readable',
    `This file cannot be read: ${error instanceof Error ? error.message : String(error)}.`,
    'Allow this program to read it, and look whether its drive is connected; it is tried again every minute.',
  );
