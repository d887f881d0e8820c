/** Files -> a zip, made as it is read: no more than a slice of one file is packed at a time. */
import { Zip, ZipDeflate } from 'fflate';

interface FileToZip {
  readonly name: string;
  /** Null when it is gone. */
  bytes(): Uint8Array | null;
}

/** The same files give the same bytes, whenever they are packed: the first day that a zip can name, as clocks show it. */
const ALWAYS = new Date(1980, 0, 1);

/** How much is packed between two looks at what else there is to do [bytes]. */
const SLICE = 1024 * 1024;

export function zipStream(files: Iterable<FileToZip>): ReadableStream<Uint8Array> {
  const slices = zipSlices(files);
  return new ReadableStream({
    pull(controller) {
      const { done, value } = slices.next();
      if (done) controller.close();
      else controller.enqueue(value);
    },
  });
}

function* zipSlices(files: Iterable<FileToZip>): Generator<Uint8Array<ArrayBuffer>> {
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
    for (let at = 0; at < content.length; at += SLICE) {
      file.push(content.slice(at, at + SLICE), false);
      yield* ready();
    }
    file.push(new Uint8Array(), true);
    yield* ready();
  }
  zip.end();
  yield* ready();
}
