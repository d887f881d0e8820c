/** Files -> a zip, made as it is read: no more than a slice of one file is packed at a time. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import { Zip, ZipDeflate } from 'fflate';

interface FileToZip {
  readonly name: string;
  /** In one piece, or in pieces that are made as they are asked for; null when it is gone. */
  bytes(): Uint8Array | Iterable<Uint8Array> | null;
}

/** The same files give the same bytes, whenever they are packed: the first day that a zip can name, as clocks show it. */
const ALWAYS = new Date(1980, 0, 1);

/** How much is packed between two looks at what else there is to do [bytes]. */
const SLICE = 1024 * 1024;

/** Other requests come in between the slices, and between the pieces of a file. */
export function zipStream(files: Iterable<FileToZip>): ReadableStream<Uint8Array> {
  const slices = zipSlices(files);
  return new ReadableStream({
    async pull(controller) {
      for (;;) {
        await nextTurn();
        const { done, value } = slices.next();
        if (done) return controller.close();
        if (value !== null) return controller.enqueue(value);
      }
    },
  });
}

/** Null is a breath between two pieces. */
function* zipSlices(files: Iterable<FileToZip>): Generator<Uint8Array<ArrayBuffer> | null> {
  let packed: Uint8Array<ArrayBuffer>[] = [];
  const zip = new Zip((error, bytes) => {
    if (error) throw error;
    packed.push(Uint8Array.from(bytes));
  });
  function* ready() {
    yield* packed;
    packed = [];
  }
  for (const { name, bytes } of files) {
    const content = bytes();
    if (content === null) throw new Error(`${name} is gone`);
    const file = new ZipDeflate(name, { level: 6 });
    file.mtime = ALWAYS;
    zip.add(file);
    for (const slice of slicesOf(content instanceof Uint8Array ? [content] : content)) {
      if (slice === null) yield null;
      else file.push(slice, false);
      yield* ready();
    }
    file.push(new Uint8Array(), true);
    yield* ready();
  }
  zip.end();
  yield* ready();
}

/** Slices of one size, so that in what pieces a file came does not show in the zip; null after each piece. */
function* slicesOf(pieces: Iterable<Uint8Array>): Generator<Uint8Array<ArrayBuffer> | null> {
  let slice = new Uint8Array(SLICE);
  let filled = 0;
  for (const piece of pieces) {
    for (let at = 0; at < piece.length; ) {
      const part = piece.subarray(at, at + SLICE - filled);
      slice.set(part, filled);
      at += part.length;
      filled += part.length;
      if (filled < SLICE) continue;
      yield slice;
      slice = new Uint8Array(SLICE);
      filled = 0;
    }
    yield null;
  }
  if (filled > 0) yield slice.subarray(0, filled);
}
