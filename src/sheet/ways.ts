/** All the ways to the heat loss of each stage, whether they agree, and what stands beside them. */
import type { Message, StageResult } from '../assessment.ts';
import { figures, methodNames } from '../words/index.ts';
import { atLength, inBrief } from './atLength.ts';
import { tied } from './drawing/tied.ts';
import { html, type Markup, named } from './html.ts';
import { messages, part } from './pieces.ts';
import * as words from './sheetWords.ts';
import { table } from './table.ts';

export const ways = (stages: readonly StageResult[]): Markup | null =>
  part(
    words.titles.ways,
    briefly(inBrief(stages)),
    ...atLength(stages).map((stage) => ofStage(stage, stages.length > 1)),
  );

const briefly = (stages: readonly StageResult[]): Markup | null =>
  table({
    caption: 'The earlier stages: heat loss by each way, with 95 % intervals, the figure of this sheet first',
    rows: stages,
    columns: [
      { head: 'Stage', cell: ({ name }) => named(name) },
      { head: 'Heat loss by each way', cell: eachWay },
      {
        head: 'Do they agree?',
        cell: ({ agreement: it }) => (it === undefined ? '' : it.agree ? 'yes' : 'not all'),
      },
    ],
  });

const eachWay = ({ estimates, heatLossWK: leading }: StageResult) =>
  estimates
    .toSorted((a, b) => Number(b.method === leading?.method) - Number(a.method === leading?.method))
    .map((it) => tied(`${figures.heatLossBetween(it.heatLossWK)} ${methodNames[it.method]}`))
    .join('; ');

function ofStage(stage: StageResult, several: boolean): Markup | null {
  const { name, estimates, agreement, rooms = [], surfaces = [], heatLossWK } = stage;
  const notes: readonly Message[] = [
    ...estimates.flatMap((it) => it.notes),
    ...(agreement?.notes ?? []),
    ...(agreement?.apart.flatMap(({ causes }) => causes) ?? []),
    ...surfaces.flatMap((it) => it.notes),
  ];
  if (estimates.length + rooms.length + surfaces.length + notes.length === 0) return null;
  const of = several ? ` in “${name}”` : '';
  return html`${several ? html`<h4>${named(name)}</h4>\n` : null}${table({
    caption: `Heat loss by each way${of}, with 95 % intervals`,
    rows: estimates,
    columns: [
      {
        head: 'Way',
        cell: ({ method }) =>
          `${methodNames[method]}${method === heatLossWK?.method ? ' (the figure of this sheet)' : ''}`,
      },
      { head: 'Heat loss', cell: (it) => tied(figures.heatLossBetween(it.heatLossWK)), numeric: true },
    ],
  })}${table({
    caption: `Each room by its own readings over the same hours${of}`,
    rows: rooms,
    columns: [
      { head: 'Room', cell: ({ room }) => named(room) },
      { head: 'Nights', cell: ({ nights }) => nights, numeric: true },
      { head: 'Time constant', cell: (it) => tied(figures.hoursBetween(it.timeConstantH)), numeric: true },
      { head: 'Over the house’s', cell: ({ ratio }) => tied(figures.ratioBetween(ratio)), numeric: true },
    ],
  })}${table({
    caption: `Loggers on surfaces${of}`,
    rows: surfaces,
    columns: [
      { head: 'Element', cell: ({ element }) => (element === null ? 'none named' : named(element)) },
      { head: 'Logger', cell: ({ logger }) => named(logger) },
      {
        head: 'U-value at this spot',
        cell: ({ uValueWM2K: it, accepted }) =>
          it === null
            ? 'no figure'
            : `${tied(figures.transmittanceBetween(it))}${accepted ? '' : ', not by all rules of the average method'}`,
        numeric: true,
      },
      {
        head: 'As drawn',
        cell: ({ designUValue: it }) => (it === null ? '' : tied(figures.transmittance(it))),
        numeric: true,
      },
    ],
  })}${messages(notes)}`;
}
