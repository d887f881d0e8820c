/** The files of a zip in memory, or why none of them is taken. */
import { Inflate } from 'fflate';
import type { Message } from '../../assessment.ts';
import { crc32 } from '../../logs/crc32.ts';
import { type ZipEntry, zipEntries } from '../../logs/zip.ts';
import * as refusals from './refusals.ts';

export type Unzipped =
  | { readonly kind: 'files'; readonly files: ReadonlyMap<string, Uint8Array> }
  | { readonly kind: 'refused'; readonly problem: Message };

/** @param largest the most that may come out of it [bytes] */
export function unzipped(bytes: Uint8Array, largest: number): Unzipped {
  const entries = bytes.length < SHORTEST ? null : zipEntries(bytes);
  if (entries === null) return refused(refusals.noZip);
  const foreign = entries.find(({ name }) => LEADS_OUT.test(name));
  if (foreign !== undefined) return refused(refusals.leadsOut(foreign.name));
  if (entries.reduce((sum, { size }) => sum + size, 0) > largest) return refused(refusals.tooLarge(largest));
  const files = new Map<string, Uint8Array>();
  for (const entry of entries) {
    const { name, encrypted } = entry;
    if (name.endsWith('/')) continue;
    if (encrypted) return refused(refusals.encrypted);
    if (files.has(name)) return refused(refusals.twice(name));
    const content = contentOf(bytes, entry);
    if (content === null) return refused(refusals.broken(name));
    files.set(name, content);
  }
  return { kind: 'files', files };
}

/** Null when it is not what the table of contents states. */
function contentOf(bytes: Uint8Array, { method, from, packedSize, size, crc }: ZipEntry): Uint8Array | null {
  const packed = bytes.subarray(from, from + packedSize);
  if (packed.length !== packedSize || (method !== STORED && method !== DEFLATED)) return null;
  const content = method === STORED ? packed : inflated(packed, size);
  return content === null || content.length !== size || crc32(content) !== crc ? null : content;
}

/** Into so many bytes and no more, whatever is packed. */
function inflated(packed: Uint8Array, size: number): Uint8Array | null {
  const content = new Uint8Array(size);
  let made = 0;
  const stream = new Inflate((part) => {
    if (made + part.length <= size) content.set(part, made);
    made += part.length;
  });
  try {
    for (let at = 0; at < packed.length && made <= size; at += STEP)
      stream.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
  } catch {
    return null;
  }
  return made === size ? content : null;
}

const refused = (problem: Message): Unzipped => ({ kind: 'refused', problem });

const LEADS_OUT = /(^|[\\/])\.\.([\\/]|$)|^[\\/]|^[a-z]:|\\|\0/i;
/** Deflate makes at most 1032 bytes of one, so that a bomb is stopped after 17 MB. */
const STEP = 16_384;
const SHORTEST = 22; // the end record alone
const STORED = 0;
const DEFLATED = 8;
