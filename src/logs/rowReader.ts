/** One row of a file from its bytes to its cells, whatever stands in it. */
import Papa from 'papaparse';
import type { Encoding } from './encoding.ts';
import { afterBreak, lineEnd } from './scan/index.ts';
import { cellsOf, type Delimiter, literalCellsOf, tidy } from './table.ts';

export interface RowFound {
  readonly cells: readonly string[];
  /** The line break that ends the row, or the end of the file. */
  readonly end: number;
}

/**
 * Reads rows at places of a file. A quoted cell may hold line breaks: the row then ends on a later line. Where the
 * quotes of a row do not pair, they are ordinary letters.
 *
 * @param bytes in an encoding that extends ASCII
 */
export function rowReader(
  bytes: Uint8Array,
  encoding: Encoding,
  delimiter: Delimiter,
): (from: number, to: number) => RowFound {
  const decoder = new TextDecoder(encoding);
  const textOf = (from: number, to: number) => decoder.decode(bytes.subarray(from, to));
  return (from, to) => {
    const line = textOf(from, to);
    if (delimiter === 'blanks' || !line.includes('"')) return { cells: cellsOf(line, delimiter), end: to };
    let text = line;
    let end = to;
    for (let lines = 1; lines <= MOST_LINES; lines++) {
      const { data, errors } = Papa.parse<string[]>(text, { delimiter, newline: '\n' });
      const broken = errors.find(({ type }) => type === 'Quotes');
      if (broken === undefined) return { cells: (data[0] ?? []).map(tidy), end };
      if (broken.code !== 'MissingQuotes' || end >= bytes.length) break;
      end = lineEnd(bytes, afterBreak(bytes, end));
      text = textOf(from, end).replace(/\r\n?/g, '\n');
    }
    return { cells: literalCellsOf(line, delimiter), end: to };
  };
}

/** A quoted cell that goes on for longer than this is a stray quote. */
const MOST_LINES = 20;
