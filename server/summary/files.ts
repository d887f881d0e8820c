/** What was read of each file, on the terminal. */
import type { Assessment } from '../../src/assessment.ts';
import { clockWords, figures, unitsWritten, writtenWords } from '../../src/words/index.ts';
import { bullet, heading } from './text.ts';

export function importText({ imports }: Assessment): string[] {
  return [
    heading('Files', '-'),
    ...imports.flatMap(({ file, rows, rejected, from, to, understood, channels, notes }) => [
      `  ${file}: ${figures.count(rows, 'row')}, ${rejected} without a reading` +
        (from && to ? `, ${from} to ${to}` : ''),
      ...(understood === null
        ? []
        : [`      ${clockWords(understood)}`, `      ${writtenWords(understood)}`]),
      ...channels.map(
        ({ column, quantity, min, max }) =>
          `      ${quantity} from “${column}”` +
          (min === null || max === null
            ? ''
            : `: ${figures.decimal(min, 1)} to ${figures.decimal(max, 1)} ${unitsWritten[quantity]}`),
      ),
      ...notes.map((note) => `    ${bullet(note).replaceAll('\n', '\n    ')}`),
    ]),
    '',
  ];
}
