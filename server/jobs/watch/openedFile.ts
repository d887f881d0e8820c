/** The bytes of a file of a watched folder, as long as it stays what it was when it was found. */
import { constants } from 'node:fs';
import { open, realpath } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { Readable } from 'node:stream';
import type { ReadableStream } from 'node:stream/web';
import { refused } from '../../refused.ts';
import { type FoundFile, stampOf } from './filesIn.ts';

/** The file is not any more what it was: it is looked at again. */
export class ChangedMeanwhile extends Error {}

/**
 * The stream breaks off when the file was changed since it was found.
 *
 * @throws ChangedMeanwhile when it is gone, is a link, or lies elsewhere by now; Refused when it cannot be read
 */
export async function openedFile(watched: string, { path, stamp }: FoundFile): Promise<ReadableStream> {
  const at = join(watched, path);
  const file = await open(at, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0)).catch((error) => {
    throw GONE.includes(error.code) ? new ChangedMeanwhile() : notReadable(error);
  });
  const isSame = async () =>
    (await realpath(at)).startsWith((await realpath(watched)) + sep) && stampOf(await file.stat()) === stamp;
  async function* bytes() {
    try {
      if (!(await isSame())) throw new ChangedMeanwhile();
      yield* file.createReadStream({ autoClose: false });
      if (!(await isSame())) throw new ChangedMeanwhile();
    } catch (error) {
      throw error instanceof ChangedMeanwhile ? error : notReadable(error);
    } finally {
      await file.close();
    }
  }
  return Readable.toWeb(Readable.from(bytes())) as ReadableStream;
}

const GONE = ['ENOENT', 'ELOOP', 'ENOTDIR'];

const notReadable = (error: unknown) =>
  refused(
    422,
    'file-not-readable',
    `This file cannot be read: ${error instanceof Error ? error.message : String(error)}.`,
    'Allow this program to read it, or put it there again.',
  );
