/** The list of hashes, a line each: "sha256  name", as `sha256sum --check` reads it. */

/** A backslash and line ends are written out, and the line then begins with a backslash (GNU coreutils). */
export const hashLine = (sha256: string, name: string): string => {
  const written = name.replaceAll('\\', '\\\\').replaceAll('\n', '\\n').replaceAll('\r', '\\r');
  return `${written === name ? '' : '\\'}${sha256}  ${written}\n`;
};

/** Each name with its hash; null when a line is none of the list. */
export function readHashList(text: string): ReadonlyMap<string, string> | null {
  const hashes = new Map<string, string>();
  for (const line of text.split('\n')) {
    if (line === '') continue;
    const found = LINE.exec(line);
    if (found === null) return null;
    const [, escaped, sha256, name] = found;
    hashes.set(escaped === '' ? name : name.replace(/\\(.)/g, (_, it) => ESCAPED[it] ?? it), sha256);
  }
  return hashes;
}

const LINE = /^(\\?)([0-9a-f]{64}) {2}(.+)$/s;
const ESCAPED: Readonly<Record<string, string>> = { n: '\n', r: '\r' };
