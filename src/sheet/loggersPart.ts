/** Which logger hung where, how it was checked, and what was found in its file; room for its calibration. */
import type { Assessment, Imported } from '../assessment.ts';
import type { House, Logger } from '../house.ts';
import { figures } from '../words/index.ts';
import { tied } from './drawing/tied.ts';
import { type Content, html, type Markup, named } from './html.ts';
import { messages, paragraph, part } from './pieces.ts';
import * as words from './sheetWords.ts';
import { type Column, table } from './table.ts';

interface Row {
  readonly logger: Logger;
  readonly imported: Imported | undefined;
}

export function loggersPart(
  { loggers, coLocation: together }: House,
  { imports }: Assessment,
): Markup | null {
  const rows = loggers.map(
    (logger): Row => ({
      logger,
      imported: imports.find(({ file }) => file === logger.file),
    }),
  );
  return part(
    words.titles.loggers,
    paragraph(
      together === undefined ? words.notSideBySide : words.sideBySide(at(together.from), at(together.to)),
    ),
    table<Row>({
      caption: 'Loggers',
      rows,
      columns: [
        { head: 'File', cell: ({ logger }) => named(logger.file) },
        { head: 'Where', cell: placeOf },
        { head: 'Serial number', cell: ({ imported }) => serialOf(imported) },
        {
          head: 'Every',
          cell: ({ imported: it }) => (it?.intervalS == null ? '' : tied(figures.duration(it.intervalS))),
          numeric: true,
        },
        { head: 'Temperature', cell: temperaturesOf, numeric: true },
        ...(loggers.some((it) => it.temperatureOffsetK !== undefined) ? [takenOff] : []),
        { head: 'Calibrated on', cell: () => html`<span class="write"></span>` },
      ],
    }),
    messages(
      imports.flatMap(({ file, notes }) => notes.map((it) => ({ ...it, where: { file, ...it.where } }))),
    ),
  );
}

const takenOff: Column<Row> = {
  head: 'Taken off',
  cell: ({ logger: { temperatureOffsetK: it } }) =>
    it === undefined ? '' : tied(`${figures.decimal(-it, 2)} K`),
  numeric: true,
};

function placeOf({ logger: { place, room, element } }: Row): Content {
  const more = [room, element].filter((it) => it !== undefined).map((it) => html`, ${named(it)}`);
  return html`${words.places[place]}${more}`;
}

function serialOf(imported: Imported | undefined): Content {
  const serial = imported?.understood?.preamble.serial ?? null;
  return serial === null ? html`<span class="write"></span>` : named(serial);
}

function temperaturesOf({ imported }: Row): string {
  const it = imported?.channels.find(({ quantity }) => quantity === 'temperature');
  if (it === undefined) return 'not read';
  const range =
    it.min === null || it.max === null
      ? ''
      : `${figures.decimal(it.min, 1)} to ${figures.temperature(it.max)}, `;
  const doubted = it.doubted === 0 ? '' : `, ${it.doubted} kept out`;
  return tied(`${range}${figures.count(it.readings, 'reading')}${doubted}`);
}

const at = (time: string) =>
  `${figures.dayOfYear(time.slice(0, 10))}${time.length > 10 ? `, ${time.slice(11, 16)}` : ''}`;
