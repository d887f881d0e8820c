/** A log that comes in an archive: the bytes of the one log in a .zip or .gz, or why they are not taken. */
import { Gunzip, Inflate } from 'fflate';
import { crc32 } from './crc32.ts';
import { isZip, type ZipEntry, zipEntries } from './zip.ts';

export type Unpacked =
  | {
      readonly kind: 'bytes';
      readonly bytes: Uint8Array;
      /** The archive that they came in. */
      readonly packed: 'zip' | 'gzip' | null;
    }
  | { readonly kind: 'several logs'; readonly names: readonly string[] }
  | { readonly kind: 'refused'; readonly why: Refusal };

export type Refusal =
  | 'encrypted'
  /** More than the limit, by what the archive states or by what came out. */
  | 'too large'
  /** A name that leads out of the folder it would be unpacked into. */
  | 'path out of the folder'
  | 'broken'
  | 'no log inside'
  /** A spreadsheet or text document: a zip, and no archive of logs. */
  | 'office';

/** Ten years of one-minute readings are less than this [bytes]. */
export const LARGEST = 1 << 28;

/** @param limit the most bytes that may come out of an archive; inflating stops there whatever the archive states */
export function unpack(bytes: Uint8Array, limit: number = LARGEST): Unpacked {
  if (isZip(bytes)) return unzipped(bytes, limit);
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) return gunzipped(bytes, limit);
  return { kind: 'bytes', bytes, packed: null };
}

function unzipped(bytes: Uint8Array, limit: number): Unpacked {
  const entries = zipEntries(bytes);
  if (entries === null) return refused('broken');
  if (entries.some(({ name }) => OFFICE.test(name))) return refused('office');
  if (entries.some(({ name }) => leadsOut(name))) return refused('path out of the folder');
  const files = entries.filter(({ name }) => !name.endsWith('/') && !HIDDEN.test(name));
  const logs = files.filter(({ name }) => LOG_NAME.test(name));
  const [entry, ...more] = logs.length > 0 ? logs : files;
  if (entry === undefined) return refused('no log inside');
  if (more.length > 0) return { kind: 'several logs', names: [entry, ...more].map(({ name }) => name) };
  if (entry.encrypted) return refused('encrypted');
  if (entry.size > limit) return refused('too large');
  const content = contentOf(bytes, entry, limit);
  if (!(content instanceof Uint8Array)) return refused(content);
  if (content.length !== entry.size || crc32(content) !== entry.crc) return refused('broken');
  return { kind: 'bytes', bytes: content, packed: 'zip' };
}

function contentOf(bytes: Uint8Array, { method, from, packedSize }: ZipEntry, limit: number) {
  const packed = bytes.subarray(from, from + packedSize);
  if (packed.length !== packedSize) return 'broken';
  if (method === STORED) return packed;
  return method === DEFLATED ? inflated(packed, new Inflate(), limit) : 'broken';
}

function gunzipped(bytes: Uint8Array, limit: number): Unpacked {
  if (bytes.length < SHORTEST_GZIP) return refused('broken');
  const end = new DataView(bytes.buffer, bytes.byteOffset + bytes.length - 8, 8);
  const content = inflated(bytes, new Gunzip(), limit);
  if (!(content instanceof Uint8Array)) return refused(content);
  // the size stands at the end alone, so that it cannot be trusted before the end is reached; several members one
  // after the other state only the last one's
  const stated = end.getUint32(4, true);
  const single = content.length === stated;
  if (single ? crc32(content) !== end.getUint32(0, true) : content.length < stated) return refused('broken');
  return { kind: 'bytes', bytes: content, packed: 'gzip' };
}

/** Inflates in small steps, so that no more than a step's worth is ever made beyond the limit. */
function inflated(
  packed: Uint8Array,
  stream: Inflate | Gunzip,
  limit: number,
): Uint8Array | 'broken' | 'too large' {
  const parts: Uint8Array[] = [];
  let size = 0;
  stream.ondata = (part) => {
    size += part.length;
    if (size <= limit) parts.push(part);
  };
  try {
    for (let at = 0; at < packed.length; at += STEP) {
      stream.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
      if (size > limit) return 'too large';
    }
  } catch {
    return 'broken';
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

const refused = (why: Refusal): Unpacked => ({ kind: 'refused', why });

const leadsOut = (name: string) => /(^|[\\/])\.\.([\\/]|$)|^[\\/]|^[a-z]:/i.test(name);

/** What file managers add of their own. */
const HIDDEN = /(^|\/)(\.|__MACOSX\/|thumbs\.db$|desktop\.ini$)/i;
const LOG_NAME = /\.(csv|txt|tsv|tab|log|dat|asc|prn)$/i;
const OFFICE = /^(\[Content_Types\]\.xml|mimetype)$/;

/** Deflate makes at most 1032 bytes of one, so that a step makes at most 4 MB. */
const STEP = 4096;
const STORED = 0;
const DEFLATED = 8;
const SHORTEST_GZIP = 18;
