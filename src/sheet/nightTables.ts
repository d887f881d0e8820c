/** Every night of every stage with what came of it, and why where it was left out. */
import type { NightResult, StageResult } from '../assessment.ts';
import { figures } from '../words/index.ts';
import { atLength, inBrief } from './atLength.ts';
import { tied } from './drawing/tied.ts';
import { html, type Markup, named } from './html.ts';
import { paragraph, part } from './pieces.ts';
import * as words from './sheetWords.ts';
import { spanOf } from './span.ts';
import { table } from './table.ts';

export const nightTables = (stages: readonly StageResult[]): Markup | null =>
  part(words.titles.eachNight, briefly(inBrief(stages)), ...atLength(stages).map(ofStage));

/** A row for each stage: all of its nights that do not stand under what was left out were used. */
const briefly = (stages: readonly StageResult[]): Markup | null =>
  stages.length === 0
    ? null
    : html`${paragraph(words.earlierInBrief, 'small lesser')}${table({
        caption: 'The earlier stages; every night that is not left out was used',
        rows: stages,
        columns: [
          { head: 'Stage', cell: ({ name }) => named(name) },
          { head: 'From and to', cell: spanOf },
          { head: 'Nights used', cell: usedOf, numeric: true, whole: true },
          { head: 'Left out, and why', cell: leftOut },
        ],
      })}`;

export const usedOf = ({ nights }: StageResult) =>
  `${nights.filter(({ used }) => used).length} of ${nights.length}`;

const leftOut = ({ nights }: StageResult) =>
  tied(
    nights
      .filter(({ used }) => !used)
      .map(({ date, reasons }) => `${figures.day(date)}: ${reasons.map(({ text }) => text).join(', ')}`)
      .join('; '),
  );

const ofStage = ({ name, nights }: StageResult): Markup | null =>
  table({
    caption: `“${name}”: ${nights.filter(({ used }) => used).length} of ${figures.count(nights.length, 'night')} used; time constants with their standard error`,
    rows: nights,
    columns: [
      { head: 'Night of', cell: ({ date }) => figures.dayOfYear(date), whole: true },
      { head: 'Hours', cell: hoursOf, whole: true },
      { head: 'Fell', cell: ({ dropK }) => written(dropK, figures.kelvins), numeric: true, whole: true },
      { head: 'Rate', cell: ({ rateKPerH }) => written(rateKPerH, figures.rate), numeric: true, whole: true },
      {
        head: 'Above outdoors',
        cell: ({ meanDifferenceK }) => written(meanDifferenceK, figures.kelvins),
        numeric: true,
        whole: true,
      },
      {
        head: 'Time constant',
        cell: ({ timeConstantH: it, timeConstantSeH: error }) =>
          it === null
            ? ''
            : tied(
                error === null ? figures.hours(it) : `${figures.hours(it)} (s.e. ${figures.hours(error)})`,
              ),
        numeric: true,
        whole: true,
      },
      {
        head: 'Used?',
        cell: ({ used, heated, reasons }) =>
          [
            used ? 'used' : 'left out',
            ...(heated ? ['heated'] : []),
            ...reasons.map(({ text }) => text),
          ].join('; '),
      },
    ],
  });

const written = (value: number | null, write: (value: number) => string) =>
  value === null ? '' : tied(write(value));

/** "20:10 to 06:20", as the house's clock had it. */
const hoursOf = ({ from, to }: NightResult) =>
  from === null || to === null ? '' : `${from.slice(11, 16)} to ${to.slice(11, 16)}`;
