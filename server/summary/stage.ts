/** One stage on the terminal. */
import type { Assessment, StageResult } from '../../src/assessment.ts';
import {
  apartSentence,
  doubtNames,
  drawnBeside,
  figures,
  methodNames,
  verdictSentences,
  yearSentence,
} from '../../src/words/index.ts';
import { furtherText, gapText, lookText } from './beyondTheFigure.ts';
import { heading, section, sentence } from './text.ts';

type Surface = NonNullable<StageResult['surfaces']>[number];

/** A stage with the answer first. */
export function stageText(stage: StageResult, { design }: Assessment): string {
  const used = stage.nights.filter((night) => night.used).length;
  const { heatLossWK: measured, timeConstantH: tau, gap } = stage;
  const drawn = drawnBeside(stage, design);
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
    ...furtherText(stage),
    ...gapText(stage),
    ...lookText(stage),
    ...section('Notes', [
      ...stage.notes,
      ...(stage.estimates.find(({ method }) => method === measured?.method)?.notes ?? []),
    ]),
    ...otherEstimates(stage),
    ...agreementText(stage),
    ...(stage.surfaces ?? []).flatMap(surfaceText),
    ...doubtText(stage),
    ...section('Air and fabric', sentence(apartSentence(stage))),
    ...section('A year', [...sentence(yearSentence(stage)), ...(stage.annual?.notes ?? [])]),
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

function surfaceText({ room, element, uValueWM2K: local, accepted, designUValue, notes }: Surface): string[] {
  const measured =
    local === null
      ? 'no figure'
      : `${figures.transmittanceBetween(local)}${accepted ? '' : ', not by all rules of the average method'}`;
  const drawn = designUValue === null ? '' : `, drawn ${figures.transmittance(designUValue)}`;
  return section(`Surface of ${element ?? 'no element'}, ${room}: ${measured}${drawn}`, notes);
}

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

/** What it comes to, each usual cause once. */
function agreementText({ agreement }: StageResult): string[] {
  if (agreement === undefined) return [];
  const causes = new Map(agreement.apart.flatMap((it) => it.causes).map((it) => [it.text, it]));
  return section('Do the ways agree', [...agreement.notes, ...causes.values()]);
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
