/** The builder's pages: measured beside the design, where heat goes by the drawing, what changed, what to do next. */
import type { Assessment, StageResult } from '../assessment.ts';
import { widthSentence } from '../words/answer.ts';
import { apartSentence, figures, methodNames } from '../words/index.ts';
import { atLength } from './atLength.ts';
import { changes } from './changes.ts';
import { designPart } from './designPart.ts';
import { rules } from './drawing/rule.ts';
import { gapMarks, heatLossMarks } from './drawing/rules.ts';
import { tied } from './drawing/tied.ts';
import { html, type Markup, named } from './html.ts';
import type { SheetInput } from './input.ts';
import { moistPart } from './moistPart.ts';
import { usedOf } from './nightTables.ts';
import { messages, paragraph, part } from './pieces.ts';
import * as words from './sheetWords.ts';
import { forRulers } from './shortNames.ts';
import { spanOf } from './span.ts';
import { table } from './table.ts';

export function builderPart({ house, assessment, curves }: SheetInput): Markup {
  const { stages, design } = assessment;
  const several = stages.length > 1;
  const last = stages.at(-1);
  return html`${part(
    words.titles.answer,
    stageTable(assessment),
    rules('Heat loss, measured and drawn', 'W/K', heatLossMarks(forRulers(assessment))),
    paragraph(design === null ? words.noDesign : words.drawnNotch, 'small lesser'),
    atLength(stages).map((stage) => paragraph(saidOf(stage, several), 'small')),
  )}${design === null ? null : designPart(house, design)}${ratioPart(assessment)}${part(words.titles.next, last === undefined ? null : messages(last.next))}${last === undefined ? null : lookPart(last)}${changes(assessment)}${moistPart(curves)}${last === undefined ? null : elementsPart(last)}`;
}

/** Which way the figure came, how wide it is and why, what of it went with the air. */
function saidOf(stage: StageResult, several: boolean): string {
  const { name, heatLossWK: measured } = stage;
  const figure =
    measured === null
      ? words.noFigure
      : `${figures.heatLossBetween(measured)}, ${methodNames[measured.method]}.`;
  return [several ? `“${name}”: ${figure}` : figure, widthSentence(stage), apartSentence(stage)]
    .filter((it) => it !== null)
    .join(' ');
}

const stageTable = ({ stages, design }: Assessment): Markup | null =>
  table({
    caption: `Each stage, with 95 % intervals${design === null ? '' : `; as drawn ${tied(figures.heatLoss(design.heatLossAsTestedWK ?? design.heatLossWK))}${design.heatLossAsTestedWK === null ? '' : ', vents shut'}`}`,
    rows: stages,
    columns: [
      { head: 'Stage', cell: ({ name }) => named(name) },
      { head: 'From and to', cell: spanOf },
      {
        head: 'Nights used',
        cell: usedOf,
        numeric: true,
        whole: true,
      },
      {
        head: 'Time constant',
        cell: ({ timeConstantH: it }) => (it === null ? 'not known' : tied(figures.hoursBetween(it))),
        numeric: true,
        whole: true,
      },
      {
        head: 'Heat loss',
        cell: ({ heatLossWK: it }) => (it === null ? 'not known' : tied(figures.heatLossBetween(it))),
        numeric: true,
        whole: true,
      },
      {
        head: 'Measured over drawn',
        cell: ({ gap }) => (gap === null ? '' : tied(figures.ratioBetween(gap.ratio))),
        numeric: true,
        whole: true,
      },
      { head: 'Verdict', cell: ({ gap }) => (gap?.verdict ? words.verdicts[gap.verdict] : 'none') },
    ],
  });

function ratioPart(assessment: Assessment): Markup | null {
  const marks = gapMarks(forRulers({ ...assessment, stages: [...atLength(assessment.stages)] }));
  const notes = assessment.stages.at(-1)?.gap?.notes ?? [];
  return marks.length === 0
    ? null
    : part(
        words.titles.ratio,
        paragraph(words.atOne),
        rules('Measured over drawn', 'ratio', marks),
        messages(notes),
      );
}

function elementsPart({ gap }: StageResult): Markup | null {
  const elements = gap?.elements ?? [];
  const between = (it: (typeof elements)[number]['uValueAlone']) =>
    it === null ? '–' : tied(figures.transmittanceBetween(it));
  return part(
    words.titles.elements,
    table({
      caption: 'U-values that would explain the whole gap; none of them was measured',
      rows: elements,
      columns: [
        { head: 'Element', cell: ({ name }) => named(name) },
        { head: 'As drawn', cell: (it) => tied(figures.transmittance(it.uValueDrawn)), numeric: true },
        { head: 'It alone', cell: (it) => between(it.uValueAlone), numeric: true },
        { head: 'All evenly', cell: (it) => between(it.uValueEvenly), numeric: true },
        {
          head: 'What could be wrong',
          cell: (it) => tied([...it.couldExplainPercent, ...it.notes].map(({ text }) => text).join(' ')),
        },
      ],
    }),
  );
}

const lookPart = ({ whereToLook = [], whereToLookNotes = [] }: StageResult): Markup | null =>
  part(words.titles.look, messages([...whereToLook.flatMap(({ notes }) => notes), ...whereToLookNotes]));
