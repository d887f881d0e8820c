/** Rows as CSV; text that a spreadsheet would run as a formula is guarded, figures stay figures. */
import Papa from 'papaparse';

export const csvOf = (rows: readonly (readonly (string | number)[])[]): string =>
  `${Papa.unparse(
    rows.map((row) => [...row]),
    { escapeFormulae: FORMULA, newline: '\r\n' },
  )}\r\n`;

/**
 * What a spreadsheet runs: the signs, their wide forms, and what it drops before them. The library's own pattern lets
 * a text of several lines through.
 */
const FORMULA = /^[\s\p{Cf}]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r]/u;
