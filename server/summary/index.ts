/** The assessment as a page of plain text for the terminal. */
import type { Evidence } from '../../src/assess.ts';
import type { Assessment } from '../../src/assessment.ts';
import { comparisonText } from './change.ts';
import { designText } from './design.ts';
import { importText } from './files.ts';
import { nightPlot } from './nightPlot.ts';
import { stageText } from './stage.ts';
import { heading } from './text.ts';

/** Stages in their order, each with the answer first; then what changed, the design, the files. */
export function summaryOf(assessment: Assessment, evidence: Evidence): string {
  return [
    heading(assessment.house, '='),
    ...comparisonText(assessment),
    ...assessment.stages.map((stage) => stageText(stage, assessment)),
    ...lastNight(evidence, assessment),
    ...designText(assessment),
    ...importText(assessment),
    'A result is evidence, not a certificate. Local codes and licensed practice decide.',
    '',
  ].join('\n');
}

function lastNight(evidence: Evidence, { stages }: Assessment): string[] {
  const shown = new Set(
    stages.flatMap(({ nights }) => nights.filter(({ used }) => used).map(({ date }) => date)),
  );
  const night = evidence.nights.findLast((it) => shown.has(it.night.date));
  if (night === undefined) return [];
  return [heading(`The last night that counts, ${night.night.date}`, '-'), nightPlot(evidence, night), ''];
}
