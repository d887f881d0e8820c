/** Bytes to text: which encoding the file is in, and whether it is text at all. */

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

export type Readable =
  | {
      readonly kind: 'text';
      readonly encoding: Encoding;
      /** Whether characters may be met that no text holds (see `isControl`). */
      readonly mayHoldControls: boolean;
    }
  | { readonly kind: 'empty' }
  | { readonly kind: 'not text'; readonly looksLike: NotText };

export type NotText = 'html' | 'pdf' | 'zip' | 'gzip' | 'picture' | 'database' | 'office' | 'binary';

/**
 * UTF-8 and UTF-16 by their byte order marks, UTF-16 without one by the zero in every other byte, then UTF-8 where
 * the bytes are valid, else Windows-1252. Nothing of the size of the file is made here.
 */
export function encodingOf(bytes: Uint8Array): Readable {
  const signature = signatures.find(({ head }) => head.every((byte, i) => bytes[i] === byte));
  if (signature !== undefined) return { kind: 'not text', looksLike: signature.looksLike };
  const wide = utf16Of(bytes);
  const { controls, firstHigh, lastHigh, inked } = wide === null ? survey(bytes) : NOTHING_TO_SURVEY;
  if (!inked) return { kind: 'empty' };
  if (controls > MAX_CONTROL_SHARE * bytes.length) return { kind: 'not text', looksLike: 'binary' };
  // all between is ASCII or told, so that a lone degree sign in the header does not cost a look at the whole
  const beyond = firstHigh < 0 ? new Uint8Array() : bytes.subarray(firstHigh, lastHigh + 2);
  const encoding = wide ?? (isUtf8(beyond) ? 'utf-8' : 'windows-1252');
  const head = textOf(bytes.subarray(0, HEAD), encoding);
  if (head.trim() === '' && bytes.length <= HEAD) return { kind: 'empty' };
  if (PAGE.test(head)) return { kind: 'not text', looksLike: 'html' };
  return { kind: 'text', encoding, mayHoldControls: wide !== null || controls > 0 };
}

/** The text with every line break as "\n", so that a line is what an editor counts. */
export function textOf(bytes: Uint8Array, encoding: Encoding): string {
  const raw = new TextDecoder(encoding).decode(bytes);
  return raw.includes('\r') ? raw.replace(/\r\n?/g, '\n') : raw;
}

/**
 * The bytes in an encoding that extends ASCII, so that digits, separators and line breaks are single bytes: UTF-16 is
 * written anew piece by piece, anything else stays. A byte order mark is taken off.
 */
export function asciiLike(bytes: Uint8Array, encoding: Encoding): { bytes: Uint8Array; encoding: Encoding } {
  if (encoding === 'utf-8' || encoding === 'windows-1252') {
    const marked = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
    return { bytes: marked && encoding === 'utf-8' ? bytes.subarray(3) : bytes, encoding };
  }
  const decoder = new TextDecoder(encoding);
  const encoder = new TextEncoder();
  const pieces: Uint8Array[] = [];
  for (let at = 0; at < bytes.length; at += PIECE)
    pieces.push(
      encoder.encode(decoder.decode(bytes.subarray(at, at + PIECE), { stream: at + PIECE < bytes.length })),
    );
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  pieces.reduce((at, piece) => {
    whole.set(piece, at);
    return at + piece.length;
  }, 0);
  return { bytes: whole, encoding: 'utf-8' };
}

/** Controls other than tab, line breaks, form feed and the old end-of-file mark: no text holds them. */
export const isControl = (byte: number): boolean => byte < 32 && !(byte >= 9 && byte <= 13) && byte !== 26;

/** A power cut leaves NULs before the row that is written next: the row itself is whole. */
export const withoutLeadingNuls = (text: string): string => text.replace(LEADING_NULS, '$1');

/** The first place of a row that is no NUL. */
export function afterNuls(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  while (at < to && bytes[at] === 0) at++;
  return at;
}

const ascii = (text: string) => Array.from(text, (letter) => letter.charCodeAt(0));

const signatures: readonly { readonly head: readonly number[]; readonly looksLike: NotText }[] = [
  { head: [0x89, ...ascii('PNG')], looksLike: 'picture' },
  { head: [0xff, 0xd8, 0xff], looksLike: 'picture' },
  { head: ascii('GIF8'), looksLike: 'picture' },
  { head: [...ascii('II*'), 0], looksLike: 'picture' },
  { head: [...ascii('MM'), 0, ...ascii('*')], looksLike: 'picture' },
  { head: ascii('%PDF'), looksLike: 'pdf' },
  { head: ascii('PK\x03\x04'), looksLike: 'zip' },
  { head: [0x1f, 0x8b], looksLike: 'gzip' },
  { head: ascii('SQLite format 3'), looksLike: 'database' },
  { head: [0xd0, 0xcf, 0x11, 0xe0], looksLike: 'office' },
  { head: ascii('{\\rtf'), looksLike: 'office' },
];

const PAGE = /^\s*(<!doctype html|<!--|<html|<head|<body|<\?xml)/i;

/** Enough to tell a page from a table [bytes]. */
const HEAD = 4096;

/** A power cut can leave a run of NULs in an honest log; a file with more than this is no text. */
const MAX_CONTROL_SHARE = 0.05;

const LEADING_NULS = /(^|\n)\0+(?=[^\0\n])/g;

function utf16Of(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const pairs = Math.min(bytes.length, HEAD) >> 1;
  const zeros = [0, 0];
  for (let i = 0; i < 2 * pairs; i++) if (bytes[i] === 0) zeros[i & 1]++;
  const [even, odd] = zeros.map((count) => count / pairs);
  if (odd > MOST_LETTERS && even < FEW_LETTERS) return 'utf-16le';
  return even > MOST_LETTERS && odd < FEW_LETTERS ? 'utf-16be' : null;
}

/** Text of the West has a zero in one byte of nearly every pair, and in the other hardly ever. */
const MOST_LETTERS = 0.8;
const FEW_LETTERS = 0.05;

const NOTHING_TO_SURVEY = { controls: 0, firstHigh: -1, lastHigh: -1, inked: true };

/** How many controls there are, whether there is anything in ink, and where bytes beyond ASCII stand. */
function survey(bytes: Uint8Array) {
  let controls = 0;
  let blanks = 0;
  let firstHigh = -1;
  let lastHigh = -1;
  for (let i = 0; i < bytes.length; i++) {
    const code = bytes[i];
    if (code > 32 && code < 128) continue;
    if (code > 127) {
      if (firstHigh < 0) firstHigh = i;
      lastHigh = i;
    } else if (isControl(code)) controls++;
    else blanks++;
  }
  return { controls, firstHigh, lastHigh, inked: blanks < bytes.length };
}

/** Piece by piece, for the text of a large file need not be held to know. */
function isUtf8(bytes: Uint8Array): boolean {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  try {
    for (let at = 0; at < bytes.length; at += PIECE)
      decoder.decode(bytes.subarray(at, at + PIECE), { stream: true });
    return true;
  } catch {
    return false;
  }
}

const PIECE = 1 << 20;
