/** What changed from one stage to another: the sentence, the ratios on a ruler, the weather of both. */
import type { Assessment } from '../assessment.ts';
import { changeSentence } from '../words/answer.ts';
import { figures } from '../words/index.ts';
import { changeOfYearSentence, smallestChangeSentence } from '../words/whatChanged.ts';
import { areMany, atLength } from './atLength.ts';
import { rules } from './drawing/rule.ts';
import type { RuleMark } from './drawing/ruleMark.ts';
import { tied } from './drawing/tied.ts';
import { html, type Markup } from './html.ts';
import { messages, paragraph, part } from './pieces.ts';
import * as words from './sheetWords.ts';
import { table } from './table.ts';

type Comparison = Assessment['comparisons'][number];

/** A comparison has its rulers; of many the ratios stand in a table. */
export function changes({ stages, comparisons }: Assessment): Markup | null {
  if (comparisons.length === 0) return part(words.titles.changed, paragraph(words.noFormerStage));
  return part(
    words.titles.changed,
    areMany(stages) ? ratioTable(comparisons) : comparisons.map(withRuler),
    weatherTable(comparisons),
    messages((areMany(stages) ? atLength(comparisons) : comparisons).flatMap(({ notes }) => notes)),
  );
}

const withRuler = (it: Comparison): Markup =>
  html`${paragraph([changeSentence(it), changeOfYearSentence(it), smallestChangeSentence(it)].filter((said) => said !== null).join(' '))}${ruler(it)}`;

function ruler({ before, after, heatLossRatio, timeConstantRatio }: Comparison): Markup | null {
  const marks = (
    [
      ['Heat loss', heatLossRatio],
      ['Time constant', timeConstantRatio],
    ] as const
  ).flatMap(([label, it]): RuleMark[] =>
    it === null ? [] : [{ label, value: it.value, low: it.low, high: it.high, kind: 'measured' }],
  );
  if (marks.length === 0) return null;
  return html`${rules(`${after} over ${before}`, 'ratio', [...marks, { label: 'Unchanged', value: 1, kind: 'drawn' }])}${paragraph(words.unchangedAtOne, 'small lesser')}`;
}

const ratioTable = (comparisons: readonly Comparison[]) =>
  table({
    caption: 'Each stage over the one before it, with 95 % intervals',
    rows: comparisons,
    columns: [
      { head: 'From and to', cell: ({ before, after }) => `“${before}” to “${after}”` },
      { head: 'Heat loss', cell: (it) => ratio(it.heatLossRatio), numeric: true },
      { head: 'Time constant', cell: (it) => ratio(it.timeConstantRatio), numeric: true },
    ],
  });

const ratio = (it: Comparison['heatLossRatio']) =>
  it === null ? 'not known' : tied(figures.ratioBetween(it));

interface Weather {
  readonly stage: string;
  readonly of: NonNullable<Comparison['weather']>['before'];
}

function weatherTable(comparisons: readonly Comparison[]): Markup | null {
  const all = comparisons.flatMap(({ before, after, weather }): Weather[] =>
    weather === undefined
      ? []
      : [
          { stage: before, of: weather.before },
          { stage: after, of: weather.after },
        ],
  );
  const rows = all.filter((it, i) => all.findIndex(({ stage }) => stage === it.stage) === i);
  const figure = (value: number | null, decimals: number, unit: string) =>
    value === null ? 'not logged' : tied(`${figures.decimal(value, decimals)} ${unit}`);
  return table({
    caption: 'The weather over the hours of the nights used',
    rows,
    columns: [
      { head: 'Stage', cell: ({ stage }) => stage },
      { head: 'Nights', cell: ({ of }) => of.nights, numeric: true },
      { head: 'Outdoors', cell: ({ of }) => figure(of.meanOutdoorC, 1, '°C'), numeric: true },
      { head: 'Inside less outside', cell: ({ of }) => figure(of.meanDifferenceK, 1, 'K'), numeric: true },
      { head: 'Wind', cell: ({ of }) => figure(of.windMS, 1, 'm/s'), numeric: true },
      { head: 'Sun of the day', cell: ({ of }) => figure(of.irradianceWM2, 0, 'W/m²'), numeric: true },
    ],
  });
}
