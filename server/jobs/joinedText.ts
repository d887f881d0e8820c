/** Two logs with the same header as one: the header once, then the rows of both. */

const BEGINS_WITH_INSTANT = /^"?\d{4}-\d\d-\d\d[T ]\d\d:\d\d[^",;\t]*/;

/**
 * Rows that both have stand there once; of those of one instant the earlier log's come first. Where each row begins
 * with its instant as in ISO 8601 they are put in the order of time, else they stay as they came.
 *
 * @returns null when the headers, which are the first lines, differ, or one of the files is not UTF-8
 */
export function joinedText(earlier: Uint8Array, later: Uint8Array): Uint8Array | null {
  const [head, ...rows] = linesOf(earlier);
  const [laterHead, ...more] = linesOf(later);
  if (head === undefined || head !== laterHead) return null;
  const known = new Set(rows);
  const all = [...rows, ...more.filter((row) => !known.has(row))];
  return new TextEncoder().encode(`${[head, ...inOrder(all)].join('\n')}\n`);
}

function linesOf(bytes: Uint8Array): string[] {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return text.split(/\r?\n/).filter((line) => line !== '');
  } catch {
    return [];
  }
}

function inOrder(rows: readonly string[]): readonly string[] {
  const timed = rows.map((row) => ({ row, instant: BEGINS_WITH_INSTANT.exec(row)?.[0] ?? null }));
  if (timed.some(({ instant }) => instant === null)) return rows;
  return timed.toSorted((a, b) => compare(a.instant, b.instant)).map(({ row }) => row);
}

const compare = (a: string | null, b: string | null) =>
  a === null || b === null || a === b ? 0 : a < b ? -1 : 1;
