/** Rows whose cells cannot be told apart. */
import type { Layout } from './layout.ts';

/**
 * Rows with more cells than there are columns, so that nobody knows which is which; and the last line when it
 * breaks off, because its last number may have lost its end.
 */
export function raggedRows({ rows, headers }: Layout, lastLineIsOpen: boolean): number[] {
  const width = headers.length;
  const ragged: number[] = [];
  rows.forEach((row, i) => {
    const tooLong = row.length > width && row.slice(width).some((cell) => cell !== '');
    const breaksOff = row.length < width && lastLineIsOpen && i === rows.length - 1 && i > 0;
    if (tooLong || breaksOff) ragged.push(i);
  });
  return ragged;
}
