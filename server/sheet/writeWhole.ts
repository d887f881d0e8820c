/** A file that appears whole or not at all. */
import { createWriteStream } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';

/** @throws Error of the file system; what was at the path before is then still there */
export async function writeWhole(
  path: string,
  content: Iterable<string | Uint8Array> | ReadableStream<Uint8Array>,
): Promise<void> {
  const half = `${path}.${process.pid}.part`;
  try {
    await pipeline(Readable.from(content), createWriteStream(half));
    await rename(half, path);
  } catch (error) {
    await rm(half, { force: true });
    throw error;
  }
}
