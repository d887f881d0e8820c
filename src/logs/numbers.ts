/** Numbers as loggers write them: with a decimal comma, with thousands marked, with their unit stuck on. */
import { type Unit, unitNamed } from './units.ts';

export type Decimal = '.' | ',';

/** The number in a trimmed cell, in the file's own unit; NaN when the cell is not one. */
export function readNumber(cell: string, decimal: Decimal): number {
  if (PLAIN[decimal].test(cell)) return finite(decimal === '.' ? cell : cell.replace(',', '.'));
  const signed = withMinus(cell);
  const bare = ungrouped((splitUnit(signed)?.number ?? signed).replace(/\s?[°º]$/, ''));
  const joined = GROUPED[decimal].test(bare) ? bare.replaceAll(decimal === '.' ? ',' : '.', '') : bare;
  return PLAIN[decimal].test(joined) ? finite(joined.replace(',', '.')) : Number.NaN;
}

/** A run of digits beyond every double is no reading. */
function finite(text: string): number {
  const number = Number(text);
  return Number.isFinite(number) ? number : Number.NaN;
}

/** Less than nothing with its minus in front, however it is written: "–1.0", "(1.0)", "1.0-". */
export function withMinus(cell: string): string {
  const behind = /^\(([\d.,]+)\)$|^([\d.,]+)[-−–]$/.exec(cell);
  return behind === null ? cell.replace(/[−–]/, '-') : `-${behind[1] ?? behind[2]}`;
}

/** The number, not yet read, and the unit of a cell such as "21.4 °C"; null when no known unit follows. */
export function splitUnit(cell: string): { readonly number: string; readonly unit: Unit } | null {
  const match = /^([-+−–]?(?:[\d.,'’]|[\s\u202f](?=\d{3}(?:\D|$)))*\d)\s*([^\d\s.,:+-].*)$/.exec(cell);
  const unit = match?.[2] === undefined ? undefined : unitNamed(match[2]);
  return match?.[1] === undefined || unit === undefined ? null : { number: match[1], unit };
}

/** "12'345.6" and "12 345,6" without the marks between their thousands, which no decimal mark can be. */
export const ungrouped = (text: string) =>
  /^[-+]?\d{1,3}(?:['’\s]\d{3})+(?:[.,]\d*)?$/.test(text) ? text.replace(/['’\s]/g, '') : text;

/** Numbers without marks between their thousands, and with them. */
export const PLAIN = {
  '.': /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i,
  ',': /^[-+]?(?:\d+,?\d*|,\d+)(?:e[-+]?\d+)?$/i,
} as const;
export const GROUPED = {
  '.': /^[-+]?\d{1,3}(?:,\d{3})+(?:\.\d*)?$/,
  ',': /^[-+]?\d{1,3}(?:\.\d{3})+(?:,\d*)?$/,
} as const;
