/** The first page, for the people who live in the house: the answer, what it did in its last nights, what to watch. */
import type { Assessment, StageResult } from '../assessment.ts';
import {
  answerSentence,
  changeSentence,
  coolingSentence,
  lastNight,
  nightSentence,
  stageAnswer,
} from '../words/answer.ts';
import { gapSentence, whereToLookSentence } from '../words/index.ts';
import { changeOfYearSentence, yearSentence } from '../words/whatChanged.ts';
import { meanOutside } from './drawing/meanOutside.ts';
import { nightRow } from './drawing/nightRow.ts';
import { rules } from './drawing/rule.ts';
import { answerMarks } from './drawing/rules.ts';
import { html, type Markup, named } from './html.ts';
import type { SheetInput } from './input.ts';
import { blank, list, paragraph, part } from './pieces.ts';
import * as words from './sheetWords.ts';
import { anyCut, withShortNames } from './shortNames.ts';

/** Letters of a name that is set smaller. */
const LONG = 60;

/** @param openQuestion where the reader finds what would settle an open verdict */
export function firstPage(input: SheetInput, openQuestion: string): Markup {
  const { house, date, version } = input;
  const assessment = withShortNames(input.assessment);
  const stage = assessment.stages.at(-1);
  const answer = stage === undefined ? null : stageAnswer(stage, assessment.design);
  const open = answer !== null && (answer.verdict === 'undecided' || answer.heatLossWK === null);
  const kind = [
    'first',
    ...(house.name.length > LONG ? ['long'] : []),
    ...(anyCut(assessment) ? ['tight'] : []),
  ];
  return html`<div class="${kind.join(' ')}"><header><p class="small lesser">${words.titles.sheet}. ${words.madeBy(version)}.
${words.madeOn(date)}.
</p>
<h1>${named(house.name)}</h1>
${blank(words.address)}</header>
<section><h2>${words.titles.firstPage}</h2>
${paragraph([saidOfLastNight(input), answer === null ? null : answerSentence(answer)].filter(Boolean).join(' '), 'answer')}${
  answer?.heatLossWK
    ? html`${rules('Heat loss, measured and drawn', 'W/K', answerMarks(answer))}${paragraph([words.wattsPerKelvin, words.howToRead, ...(answer.drawnWK === null ? [] : [words.drawnNotch])].join(' '), 'small lesser')}`
    : null
}${stage === undefined ? null : meaning(stage, assessment, open ? openQuestion : null)}</section>
${nightsOf(input)}${part(words.titles.watch, list(words.watch))}${paragraph(words.evidence, 'strong')}${paragraph(words.privacy, 'small')}</div>`;
}

function saidOfLastNight({ assessment, curves }: SheetInput): string | null {
  const night = lastNight(assessment);
  const curve = curves.find(({ date }) => date === night?.date);
  return night && nightSentence(night, curve === undefined ? null : meanOutside(curve));
}

/** What the figures come to in everyday terms, a thought a line. */
function meaning(
  stage: StageResult,
  { comparisons }: Assessment,
  openQuestion: string | null,
): Markup | null {
  const change = comparisons.at(-1);
  const thoughts = [
    [stage.heatLossWK && stage.timeConstantH && coolingSentence(stage.timeConstantH)],
    [stage.gap && gapSentence(stage.gap), openQuestion],
    [whereToLookSentence(stage)],
    [yearSentence(stage)],
    change === undefined ? [] : [changeSentence(change), changeOfYearSentence(change)],
  ];
  return list(thoughts.map((said) => said.filter((it) => it !== null).join(' ')).filter((it) => it !== ''));
}

function nightsOf({ assessment, curves }: SheetInput): Markup | null {
  const nights = assessment.stages.flatMap((stage) => stage.nights);
  return part(
    words.titles.nights,
    curves.length === 0 ? paragraph(words.noNights) : nightRow(curves, nights),
  );
}
