/** What changed between stages, on the terminal. */
import type { Assessment } from '../../src/assessment.ts';
import { changeOfYearSentence, figures } from '../../src/words/index.ts';
import { bullet, heading, sentence } from './text.ts';

export function comparisonText({ comparisons }: Assessment): string[] {
  if (comparisons.length === 0) return [];
  return [
    heading('What changed', '-'),
    ...comparisons.flatMap(changeText),
    ...told(comparisons).map(bullet),
    '',
  ];
}

/** What is to be said of all pairs alike is said once. */
function told(comparisons: Assessment['comparisons']) {
  return [...new Map(comparisons.flatMap(({ notes }) => notes).map((it) => [it.text, it])).values()];
}

function changeText(comparison: Assessment['comparisons'][number]): string[] {
  const { before, after, heatLossRatio, heatLossDifferenceWK: watts, airChangesPerHour: air } = comparison;
  return [
    heatLossRatio
      ? `Heat loss, “${after}” over “${before}”: ${figures.ratioBetween(heatLossRatio)}`
      : `“${after}” and “${before}” cannot be compared: a side has too few nights.`,
    ...(watts
      ? [
          `  in watts: ${figures.heatLossBetween(watts)}; less than 0 is a saving (by the ratio, which is surer than the difference of both figures)`,
        ]
      : []),
    ...(air ? [`  in air changes per hour, if all of it were leakage: ${figures.ratioBetween(air)}`] : []),
    ...sentence(changeOfYearSentence(comparison)).map(bullet),
  ];
}
