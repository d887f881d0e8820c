/** Lines that were pasted -> a file like any other, by the name that the person gives it. */

/** A heading and a reading at least. */
export const isLog = (text: string): boolean => text.trim().includes('\n');

/**
 * @param name as it is typed, such as "Kitchen"
 * @param taken the paths that are there already
 */
export function pastedPath(name: string, taken: readonly string[]): string {
  const plain = name
    .replace(/[\\/:\p{Cc}]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '')
    .slice(0, LONGEST);
  const stem = plain === '' ? FIRST_NAME : plain.replace(/\.(csv|txt)$/i, '');
  const paths = Array.from({ length: taken.length + 1 }, (_, i) =>
    i === 0 ? `${stem}.csv` : `${stem} ${i + 1}.csv`,
  );
  return paths.find((path) => taken.every((it) => it.toLowerCase() !== path.toLowerCase())) ?? paths[0];
}

export const FIRST_NAME = 'Pasted log';
const LONGEST = 80;
