/** The raw files, each with its hash, and how its clock was read. */
import { clockWords, figures } from '../words/index.ts';
import { html, type Markup, named } from './html.ts';
import type { SheetInput } from './input.ts';
import { paragraph, part } from './pieces.ts';
import * as words from './sheetWords.ts';
import { table } from './table.ts';

export function filesPart({ house, assessment, files, version }: SheetInput): Markup | null {
  const { timeZone, latitude, longitude } = house.location;
  return part(
    words.titles.files,
    paragraph(
      `${words.madeBy(version)}. ${words.zoneWords(timeZone, latitude, longitude)} ${words.hashWords}`,
    ),
    table({
      caption: 'Files as they were read, with their SHA-256 hashes',
      rows: files,
      columns: [
        { head: 'File', cell: ({ name }) => named(name) },
        { head: 'Bytes', cell: ({ bytes }) => bytes, numeric: true },
        { head: 'SHA-256', cell: ({ sha256 }) => html`<span class="hash">${sha256}</span>` },
      ],
    }),
    table({
      caption: 'How each file was understood',
      rows: assessment.imports,
      columns: [
        { head: 'File', cell: ({ file }) => named(file) },
        { head: 'Rows', cell: ({ rows }) => rows, numeric: true },
        { head: 'From', cell: ({ from }) => (from === null ? '' : figures.moment(from)) },
        { head: 'To', cell: ({ to }) => (to === null ? '' : figures.moment(to)) },
        { head: 'Clock', cell: ({ understood }) => (understood === null ? '' : clockWords(understood)) },
      ],
    }),
  );
}
