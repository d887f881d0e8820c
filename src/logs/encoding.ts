/** Bytes to text: which encoding the file is in, and whether it is text at all. */

export type Decoded =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'empty' }
  | { readonly kind: 'not text'; readonly looksLike: NotText };

export type NotText = 'html' | 'pdf' | 'zip' | 'gzip' | 'picture' | 'database' | 'office' | 'binary';

/**
 * The text of a file with every line break as "\n", so that a line is what an editor counts.
 * UTF-8 and UTF-16 by their byte order marks, then UTF-8 where it is valid, else Windows-1252.
 */
export function decode(bytes: Uint8Array): Decoded {
  const signature = signatures.find(({ head }) => head.every((byte, i) => bytes[i] === byte));
  if (signature !== undefined) return { kind: 'not text', looksLike: signature.looksLike };
  const raw = textOf(bytes);
  if (raw.trim() === '') return { kind: 'empty' };
  if (controlShare(raw) > MAX_CONTROL_SHARE) return { kind: 'not text', looksLike: 'binary' };
  if (/^\s*(<!doctype html|<html|<head|<\?xml)/i.test(raw)) return { kind: 'not text', looksLike: 'html' };
  return { kind: 'text', text: raw.includes('\r') ? raw.replace(/\r\n?/g, '\n') : raw };
}

const ascii = (text: string) => Array.from(text, (letter) => letter.charCodeAt(0));

const signatures: readonly { readonly head: readonly number[]; readonly looksLike: NotText }[] = [
  { head: [0x89, ...ascii('PNG')], looksLike: 'picture' },
  { head: [0xff, 0xd8, 0xff], looksLike: 'picture' },
  { head: ascii('GIF8'), looksLike: 'picture' },
  { head: ascii('%PDF'), looksLike: 'pdf' },
  { head: ascii('PK\x03\x04'), looksLike: 'zip' },
  { head: [0x1f, 0x8b], looksLike: 'gzip' },
  { head: ascii('SQLite format 3'), looksLike: 'database' },
  { head: [0xd0, 0xcf, 0x11, 0xe0], looksLike: 'office' },
];

/** A power cut can leave a run of NULs in an honest log; a file with more than this is no text. */
const MAX_CONTROL_SHARE = 0.05;

function textOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** Share of characters that no text holds: controls other than tab, line breaks, form feed and the old end-of-file mark. */
function controlShare(text: string): number {
  let controls = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < 32 && !(code >= 9 && code <= 13) && code !== 26) controls++;
  }
  return controls / text.length;
}
