/** Rows as CSV; text that a spreadsheet would run as a formula is guarded, figures stay figures. */
import Papa from 'papaparse';

export const csvOf = (rows: readonly (readonly (string | number)[])[]): string =>
  `${Papa.unparse(
    rows.map((row) => [...row]),
    { escapeFormulae: true, newline: '\r\n' },
  )}\r\n`;
