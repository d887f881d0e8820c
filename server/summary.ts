/** The assessment as a page of plain text for the terminal. */
import type { Evidence } from '../src/assess.ts';
import type { Assessment, Message, StageResult } from '../src/assessment.ts';
import {
  clockWords,
  doubtNames,
  figures,
  methodNames,
  unitsWritten,
  verdictSentences,
  writtenWords,
} from '../src/words/index.ts';
import { nightPlot } from './nightPlot.ts';

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

const heading = (text: string, line: string) => `${text}\n${line.repeat(text.length)}\n`;
const bullet = ({ text, remedy }: Message) => `  - ${text}${remedy ? `\n    ${remedy}` : ''}`;

function stageText(stage: StageResult, { design }: Assessment): string {
  const used = stage.nights.filter((night) => night.used).length;
  const { heatLossWK: measured, timeConstantH: tau, gap } = stage;
  const drawn = design && (design.heatLossAsTestedWK ?? design.heatLossWK);
  return [
    heading(stage.name, '-'),
    measured
      ? `Heat loss, measured   ${figures.heatLossBetween(measured)}   ${methodNames[measured.method]}`
      : 'Heat loss: no figure can be given.',
    ...(drawn === null ? [] : [`Heat loss, as drawn   ${figures.heatLoss(drawn)}`]),
    ...(gap
      ? [
          `Measured / drawn      ${figures.ratioBetween(gap.ratio)}${gap.verdict ? `   ${verdictSentences[gap.verdict]}` : ''}`,
        ]
      : []),
    `Time constant         ${tau ? figures.hoursBetween(tau) : 'not known'}   from ${used} of ${figures.count(stage.nights.length, 'night')}`,
    '(95 % intervals; the method’s own figure in brackets)',
    '',
    ...stage.nights.map(nightLine),
    '',
    ...section('What to do next', stage.next),
    ...section('Notes', [
      ...stage.notes,
      ...(stage.estimates.find(({ method }) => method === measured?.method)?.notes ?? []),
    ]),
    ...otherEstimates(stage),
    ...doubtText(stage),
  ].join('\n');
}

function nightLine({
  date,
  used,
  dropK,
  rateKPerH,
  meanDifferenceK,
  timeConstantH,
  reasons,
}: StageResult['nights'][number]): string {
  const figuresOf =
    dropK === null || rateKPerH === null || meanDifferenceK === null
      ? 'no window'
      : `fell ${figures.kelvins(dropK)} at ${figures.rate(rateKPerH)}, ${figures.kelvins(meanDifferenceK)} above outside` +
        (timeConstantH === null ? '' : `, ${figures.hours(timeConstantH)}`);
  const why = reasons.map(({ text }) => text).join('; ');
  return `  ${date} ${used ? 'used    ' : 'left out'}  ${figuresOf}${why ? ` (${why})` : ''}`;
}

const section = (title: string, messages: readonly Message[]) =>
  messages.length === 0 ? [] : [`${title}:`, ...messages.map(bullet), ''];

function otherEstimates({ estimates, heatLossWK }: StageResult): string[] {
  const others = estimates.filter(({ method }) => method !== heatLossWK?.method);
  if (others.length === 0) return [];
  return [
    'Other ways to the same figure:',
    ...others.map(
      ({ method, heatLossWK: it }) => `  - ${methodNames[method]}: ${figures.heatLossBetween(it)}`,
    ),
    '',
  ];
}

/** Shares too small to matter are left out. */
function doubtText({ doubts }: StageResult): string[] {
  if (doubts === undefined) return [];
  const told = doubts.filter(({ share }) => share >= 0.05);
  return [
    'Where the width of the interval comes from:',
    ...told.map(({ source, share }) => `  - ${doubtNames[source]}: ${figures.percent(share)}`),
    '',
  ];
}

function comparisonText({ comparisons }: Assessment): string[] {
  if (comparisons.length === 0) return [];
  return [
    heading('What changed', '-'),
    ...comparisons.map(({ before, after, heatLossRatio }) =>
      heatLossRatio
        ? `Heat loss, “${after}” over “${before}”: ${figures.ratioBetween(heatLossRatio)}`
        : `“${after}” and “${before}” cannot be compared: a side has too few nights.`,
    ),
    ...comparisons.flatMap(({ notes }) => notes.map(bullet)),
    '',
  ];
}

function lastNight(evidence: Evidence, { stages }: Assessment): string[] {
  const shown = new Set(
    stages.flatMap(({ nights }) => nights.filter(({ used }) => used).map(({ date }) => date)),
  );
  const night = evidence.nights.findLast((it) => shown.has(it.night.date));
  if (night === undefined) return [];
  return [heading(`The last night that counts, ${night.night.date}`, '-'), nightPlot(evidence, night), ''];
}

function designText({ design }: Assessment): string[] {
  if (design === null) return [];
  return [
    heading('As drawn', '-'),
    ...design.elements.map(
      ({ name, areaM2, uValue, heatLossWK }) =>
        `  ${name.padEnd(28)} ${figures.area(areaM2).padStart(9)}  ` +
        (uValue === null || heatLossWK === null
          ? 'U-value not known'
          : `${figures.transmittance(uValue)}  ${figures.heatLoss(heatLossWK).padStart(9)}`),
    ),
    `  Thermal bridges ${figures.heatLoss(design.bridgesWK)}, ventilation ${figures.heatLoss(design.ventilationWK)}; in all ${figures.heatLoss(design.heatLossWK)}` +
      (design.heatLossAsTestedWK === null
        ? ''
        : `, as tested ${figures.heatLoss(design.heatLossAsTestedWK)}`),
    ...[...design.notes, ...design.elements.flatMap(({ notes }) => notes)].map(bullet),
    '',
  ];
}

function importText({ imports }: Assessment): string[] {
  return [
    heading('Files', '-'),
    ...imports.flatMap(({ file, rows, rejected, from, to, understood, channels, notes }) => [
      `  ${file}: ${figures.count(rows, 'row')}, ${rejected} without a reading` +
        (from && to ? `, ${from} to ${to}` : ''),
      ...(understood === null
        ? []
        : [`      ${clockWords(understood)}`, `      ${writtenWords(understood)}`]),
      ...channels.map(
        ({ column, quantity, min, max }) =>
          `      ${quantity} from “${column}”` +
          (min === null || max === null
            ? ''
            : `: ${figures.decimal(min, 1)} to ${figures.decimal(max, 1)} ${unitsWritten[quantity]}`),
      ),
      ...notes.map((note) => `    ${bullet(note).replaceAll('\n', '\n    ')}`),
    ]),
    '',
  ];
}
