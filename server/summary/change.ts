/** What changed between stages, on the terminal. */
import type { Assessment } from '../../src/assessment.ts';
import { changeOfYearSentence, figures } from '../../src/words/index.ts';
import { bullet, heading, sentence } from './text.ts';

export function comparisonText({ comparisons }: Assessment): string[] {
  if (comparisons.length === 0) return [];
  return [
    heading('What changed', '-'),
    ...comparisons.map(({ before, after, heatLossRatio }) =>
      heatLossRatio
        ? `Heat loss, “${after}” over “${before}”: ${figures.ratioBetween(heatLossRatio)}`
        : `“${after}” and “${before}” cannot be compared: a side has too few nights.`,
    ),
    ...comparisons.flatMap(changeText),
    '',
  ];
}

function changeText(comparison: Assessment['comparisons'][number]): string[] {
  const { heatLossDifferenceWK: watts, airChangesPerHour: air, notes } = comparison;
  return [
    ...(watts ? [`  in watts: ${figures.heatLossBetween(watts)}; less than 0 is a saving`] : []),
    ...(air ? [`  in air changes per hour, if all of it were leakage: ${figures.ratioBetween(air)}`] : []),
    ...sentence(changeOfYearSentence(comparison)).map(bullet),
    ...notes.map(bullet),
  ];
}
