/** The table of contents at the end of a .zip (PKWARE APPNOTE 6.3.10, 4.3.7, 4.3.12 and 4.3.16). */

export interface ZipEntry {
  readonly name: string;
  readonly encrypted: boolean;
  /** 0 stored, 8 deflated (4.4.5). */
  readonly method: number;
  readonly crc: number;
  /** As the archive states it [bytes]; 4294967295 stands for more. */
  readonly size: number;
  readonly packedSize: number;
  /** Where its packed bytes begin. */
  readonly from: number;
}

/** A local file header, or the end record of an empty archive. */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 &&
  bytes[1] === 0x4b &&
  ((bytes[2] === 3 && bytes[3] === 4) || (bytes[2] === 5 && bytes[3] === 6));

/** All entries; null where the table of contents is missing or does not fit the file. */
export function zipEntries(bytes: Uint8Array): readonly ZipEntry[] | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endRecord(view);
  if (end < 0) return null;
  const entries: ZipEntry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let i = view.getUint16(end + 10, true); i > 0; i--) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== CENTRAL) return null;
    const nameLength = view.getUint16(at + 28, true);
    const local = view.getUint32(at + 42, true);
    if (local + 30 > bytes.length || view.getUint32(local, true) !== LOCAL) return null;
    entries.push({
      name: new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength)),
      encrypted: (view.getUint16(at + 8, true) & 1) === 1,
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packedSize: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      from: local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

/** The end record stands last, before a comment of at most 65535 bytes; -1 where there is none. */
function endRecord(view: DataView): number {
  const last = view.byteLength - 22;
  for (let at = last; at >= Math.max(0, last - 0xffff); at--) if (view.getUint32(at, true) === END) return at;
  return -1;
}

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
