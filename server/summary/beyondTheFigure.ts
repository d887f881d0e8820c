/** What a figure comes to: where the gap could sit, where to look, what would decide it. */
import type { StageResult } from '../../src/assessment.ts';
import { chance, figures, gapSentence, whereToLookSentence } from '../../src/words/index.ts';
import { section, sentence } from './text.ts';

/** Tests that might settle it, the likeliest first. */
export function furtherText({ furtherTests = [] }: StageResult): string[] {
  if (furtherTests.length === 0) return [];
  return [
    'What further tests would leave of it (measured / drawn, if the figure stays):',
    ...furtherTests.map(
      ({ text, ratio, chanceToDecide }) =>
        `  ${figures.ratioBetween(ratio)}   settles it with ${chance(chanceToDecide).padEnd(11)}  ${text}`,
    ),
    '',
  ];
}

export function gapText(stage: StageResult): string[] {
  const { gap } = stage;
  if (gap === null) return [];
  const elements = gap.elements ?? [];
  return [
    ...section('The gap', [...sentence(gapSentence(gap)), ...(gap.notes ?? [])]),
    ...(elements.length === 0
      ? []
      : [
          'U-values: as drawn, if the gap sat in this element alone, if all insulated ones shared it [W/(m²K)]:',
          ...elements.flatMap(({ name, uValueDrawn, uValueAlone, uValueEvenly, couldExplainPercent }) => [
            `  ${name.padEnd(28)} ${figures.decimal(uValueDrawn, 2)}   ${
              uValueAlone === null ? 'cannot hold it alone' : figures.ratioBetween(uValueAlone)
            }   ${uValueEvenly === null ? 'not among them' : figures.ratioBetween(uValueEvenly)}`,
            ...couldExplainPercent.map(({ text }) => `      ${text}`),
          ]),
          '',
        ]),
  ];
}

export function lookText(stage: StageResult): string[] {
  const looks = stage.whereToLook ?? [];
  if (looks.length === 0) return [];
  return section('Where to look first', [
    ...sentence(whereToLookSentence(stage)),
    ...looks.flatMap(({ notes }) => notes),
    ...(stage.whereToLookNotes ?? []),
  ]);
}
