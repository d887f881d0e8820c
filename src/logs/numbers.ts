/** Numbers as loggers write them: with a decimal comma, with thousands marked, with their unit stuck on. */
import { type Unit, unitNamed } from './units.ts';

export type Decimal = '.' | ',';

/** The number in a trimmed cell, in the file's own unit; NaN when the cell is not one. */
export function readNumber(cell: string, decimal: Decimal): number {
  if (PLAIN[decimal].test(cell)) return finite(decimal === '.' ? cell : cell.replace(',', '.'));
  const bare = ungrouped((splitUnit(cell)?.number ?? cell).replace('−', '-').replace(/\s?[°º]$/, ''));
  const joined = GROUPED[decimal].test(bare) ? bare.replaceAll(decimal === '.' ? ',' : '.', '') : bare;
  return PLAIN[decimal].test(joined) ? finite(joined.replace(',', '.')) : Number.NaN;
}

/** A run of digits beyond every double is no reading. */
function finite(text: string): number {
  const number = Number(text);
  return Number.isFinite(number) ? number : Number.NaN;
}

/** The number, not yet read, and the unit of a cell such as "21.4 °C"; null when no known unit follows. */
export function splitUnit(cell: string): { readonly number: string; readonly unit: Unit } | null {
  const match = /^([-+−]?(?:[\d.,'’]|[\s\u202f](?=\d{3}(?:\D|$)))*\d)\s*([^\d\s.,:+-].*)$/.exec(cell);
  const unit = match?.[2] === undefined ? undefined : unitNamed(match[2]);
  return match?.[1] === undefined || unit === undefined ? null : { number: match[1], unit };
}

/** "12'345.6" and "12 345,6" without the marks between their thousands, which no decimal mark can be. */
const ungrouped = (text: string) =>
  /^[-+]?\d{1,3}(?:['’\s]\d{3})+(?:[.,]\d*)?$/.test(text) ? text.replace(/['’\s]/g, '') : text;

/**
 * The decimal mark of a whole file by the majority of its cells. "1,234" could be either: it counts for the
 * comma only when no cell speaks for the point.
 */
export function decimalOf(cells: Iterable<string>): Decimal {
  let point = 0;
  let comma = 0;
  let either = 0;
  for (const cell of cells) {
    const number = ungrouped(splitUnit(cell)?.number ?? cell);
    if (/^[-+−]?\d{1,3},\d{3}$/.test(number)) either++;
    else if ((number.includes('.') && PLAIN['.'].test(number)) || GROUPED['.'].test(number)) point++;
    else if ((number.includes(',') && PLAIN[','].test(number)) || GROUPED[','].test(number)) comma++;
  }
  return comma > point || (point === 0 && either > 0) ? ',' : '.';
}

const PLAIN = {
  '.': /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i,
  ',': /^[-+]?(?:\d+,?\d*|,\d+)(?:e[-+]?\d+)?$/i,
} as const;
const GROUPED = {
  '.': /^[-+]?\d{1,3}(?:,\d{3})+(?:\.\d*)?$/,
  ',': /^[-+]?\d{1,3}(?:\.\d{3})+(?:,\d*)?$/,
} as const;
