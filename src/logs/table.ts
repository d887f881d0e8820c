/** Text to rows of trimmed cells, each with the line that an editor would show it on. */
import Papa from 'papaparse';

export type Delimiter = '\t' | ';' | ',' | '|' | 'blanks';

export interface Table {
  readonly rows: readonly (readonly string[])[];
  /** Line of each row, from 1; where a quoted cell holds line breaks, the line it begins on. */
  readonly lines: readonly number[];
}

/** The rows of a text whose line breaks are "\n"; blank lines are left out, but counted. */
export function tableOf(text: string, delimiter: Delimiter): Table {
  if (delimiter === 'blanks') return blankTable(text);
  return (
    delimitedTable(text, delimiter, '"') ?? delimitedTable(text, delimiter, null) ?? { rows: [], lines: [] }
  );
}

/** The cells of one line. */
export function cellsOf(line: string, delimiter: Delimiter): string[] {
  if (delimiter === 'blanks') return (line.match(/"[^"]*"|\S+/g) ?? []).map(tidy);
  if (!line.includes('"')) return line.split(delimiter).map(tidy);
  const [cells = []] = Papa.parse<string[]>(line, { delimiter, newline: '\n' }).data;
  return cells.map(tidy);
}

/** The cells of one line in which quotes are ordinary letters. */
export function literalCellsOf(line: string, delimiter: Exclude<Delimiter, 'blanks'>): string[] {
  const [cells = []] = Papa.parse<string[]>(line, { delimiter, newline: '\n', quoteChar: NO_QUOTE }).data;
  return cells.map(tidy);
}

/** A comment, or a header marked as one. */
export const isComment = (row: readonly string[]): boolean => /^(#|\/\/|!)/.test(row[0] ?? '');

/**
 * A stray quote would swallow the lines up to the next one: where the quotes do not pair, null is given, and
 * the file is read again with quotes as ordinary letters.
 */
function delimitedTable(text: string, delimiter: Delimiter, quote: '"' | null): Table | null {
  const rows: string[][] = [];
  const lines: number[] = [];
  const breaksInside = quote !== null && text.includes(quote);
  let line = 1;
  let broken = false;
  Papa.parse<string[]>(text, {
    delimiter,
    newline: '\n',
    quoteChar: quote ?? NO_QUOTE,
    step: ({ data, errors }, parser) => {
      if (quote !== null && errors.some(({ type }) => type === 'Quotes')) {
        broken = true;
        parser.abort();
        return;
      }
      const begins = line++;
      if (breaksInside) for (const cell of data) if (cell.includes('\n')) line += cell.split('\n').length - 1;
      if (data.length === 1 && data[0] === '') return;
      for (let at = 0; at < data.length; at++) data[at] = tidy(data[at]);
      rows.push(data);
      lines.push(begins);
    },
  });
  return broken ? null : { rows, lines };
}

function blankTable(text: string): Table {
  const rows: string[][] = [];
  const lines: number[] = [];
  text.split('\n').forEach((line, i) => {
    const cells = cellsOf(line, 'blanks');
    if (cells.length === 0) return;
    rows.push(cells);
    lines.push(i + 1);
  });
  return { rows, lines };
}

/** A letter that no text holds. */
const NO_QUOTE = '\uffff';

/** A cell without the blanks, quotes and formula signs about it. */
export const tidy = (cell: string) => {
  const trimmed = cell.startsWith('="') ? cell.slice(1).trim() : cell.trim();
  return trimmed.startsWith('"') && trimmed.endsWith('"') && trimmed.length > 1
    ? trimmed.slice(1, -1).trim()
    : trimmed;
};
