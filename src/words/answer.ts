/** The answer in sentences a homeowner understands: last night, the heat loss against the drawing, what a change did. */
import type { Assessment, Estimate, NightResult, StageResult, Verdict } from '../assessment.ts';
import {
  count,
  day,
  heatLoss,
  heatLossBetween,
  hoursBetween,
  kelvins,
  moment,
  percent,
  temperature,
} from './figures.ts';
import { doubtNames, verdictSentences } from './names.ts';

/** What a stage comes to, as far as it is known. Units are in the names. */
export interface Answer {
  readonly heatLossWK: Estimate | null;
  readonly drawnWK: number | null;
  readonly ratio: Estimate | null;
  readonly verdict: Verdict | null;
  readonly timeConstantH: Estimate | null;
}

/** The answer of one stage; the drawing counts as tested where that is given. */
export const stageAnswer = (stage: StageResult, design: Assessment['design']): Answer => ({
  heatLossWK: stage.heatLossWK,
  drawnWK: design && (design.heatLossAsTestedWK ?? design.heatLossWK),
  ratio: stage.gap?.ratio ?? null,
  verdict: stage.gap?.verdict ?? null,
  timeConstantH: stage.timeConstantH,
});

/** "It loses between 88 and 189 W/K; the drawing says 103 W/K. Whether …" */
export function answerSentence(answer: Answer): string {
  const { heatLossWK: measured, drawnWK: drawn } = answer;
  if (measured === null)
    return answer.timeConstantH === null
      ? 'How well it holds its warmth cannot be told from these nights yet.'
      : `${coolingSentence(answer.timeConstantH)} How many watts that is cannot be told yet.`;
  if (drawn === null) return `It loses ${lossBetween(measured)}. There is no design to set it beside.`;
  return `It loses ${lossBetween(measured)}; the drawing says ${heatLoss(drawn)}. ${judgement(answer)}`;
}

function judgement({ ratio, verdict }: Answer): string {
  if (verdict === null)
    return 'The house was not complete then, so this is no verdict on the finished design.';
  if (ratio !== null && ratio.high < 1) return 'It loses less than drawn: better than it had to be.';
  return verdictSentences[verdict];
}

/** Below this a share of the doubt is not worth the words. */
const LEAST_SHARE = 0.05;

/**
 * "Where the width of the interval comes from: how much heat the house holds 58 %; the method itself 19 %."
 *
 * @param several there are other stages, so that this one is named
 * @returns null where it is not known
 */
export function widthSentence({ name, doubts = [] }: StageResult, several = false): string | null {
  const told = doubts.filter(({ share }) => share >= LEAST_SHARE);
  if (told.length === 0) return null;
  const parts = told.map(({ source, share }) => `${doubtNames[source]} ${percent(share)}`);
  return `Where the width of the interval${several ? ` of “${name}”` : ''} comes from: ${parts.join('; ')}.`;
}

/** "After 99 to 116 hours without heat, about a third of its warmth over outdoors is left." */
export const coolingSentence = (timeConstant: Estimate) =>
  `After ${hoursBetween(timeConstant).replace(/ h .*/, ' hours')} without heat, about a third of its warmth over outdoors is left.`;

/**
 * "In the night of 12 February it fell 1.2 K in 9 hours 10 minutes while it was 4.1 °C outside."
 *
 * @param meanOutside over the hours of the fall [°C]; null where it is not known
 * @returns null when nothing of that night could be measured
 */
export function nightSentence(night: NightResult, meanOutside: number | null): string | null {
  const { date, from, to, dropK, meanDifferenceK } = night;
  if (dropK === null || from === null || to === null) return null;
  const moved = `${dropK < 0 ? 'rose' : 'fell'} ${kelvins(Math.abs(dropK))}`;
  const outside =
    meanOutside !== null
      ? ` while it was ${temperature(meanOutside)} outside`
      : meanDifferenceK !== null
        ? ` while it was ${kelvins(meanDifferenceK)} warmer inside than outside`
        : '';
  return `In the night of ${day(date)} it ${moved} in ${hoursAndMinutes((Date.parse(to) - Date.parse(from)) / 60_000)}${outside}.`;
}

/** The last night that counts, or failing that the last in which anything was measured. */
export function lastNight({ stages }: Assessment): NightResult | null {
  const nights = stages
    .flatMap((stage) => stage.nights)
    .filter(({ dropK }) => dropK !== null)
    .sort((a, b) => a.date.localeCompare(b.date));
  return nights.findLast(({ used }) => used) ?? nights.at(-1) ?? null;
}

/** "From “Before” to “After” the heat loss fell by 5 to 22 %." */
export function changeSentence({
  before,
  after,
  heatLossRatio: it,
}: Assessment['comparisons'][number]): string {
  const stages = `From “${before}” to “${after}”`;
  if (it === null) return `${stages} nothing can be compared: one side has too few good nights.`;
  const [least, most] = [Math.abs(1 - it.high), Math.abs(1 - it.low)];
  if (it.high < 1) return `${stages} the heat loss fell by ${between(least, most)}.`;
  if (it.low > 1) return `${stages} the heat loss rose by ${between(most, least)}.`;
  return `${stages} the heat loss changed by something between ${percent(most)} less and ${percent(least)} more, so these nights do not show for certain that it changed.`;
}

/** "The last reading is of 13 February 2027, 12:00." */
export const lastReadingSentence = (lastReading: string | null) =>
  lastReading === null ? 'No reading yet.' : `Last reading ${moment(lastReading)}.`;

/** "26 nights, the newest at the right: 20 used, 4 left out, 2 in no stage. …" */
export function nightsSentence(all: number, nights: readonly NightResult[]): string {
  const used = nights.filter((night) => night.used).length;
  const counts = [
    [used, 'used'],
    [nights.length - used, 'left out'],
    [all - nights.length, 'in no stage'],
  ] as const;
  const said = counts.filter(([n]) => n > 0).map(([n, fate]) => `${n} ${fate}`);
  const order = all > 1 ? ', the newest at the right' : '';
  const hollow = used < all ? ' A hollow night was not used, for the reason on it.' : '';
  return `${count(all, 'night')}${order}: ${said.join(', ')}.${hollow}`;
}

/** "fell 1.2 K, used", for a night that is one of many; undefined where it belongs to no stage. */
export function fateOfNight(night: NightResult | undefined): string {
  if (night === undefined) return 'belongs to no stage';
  const { dropK, used, heated } = night;
  const moved = dropK === null ? [] : [`${dropK < 0 ? 'rose' : 'fell'} ${kelvins(Math.abs(dropK))}`];
  const why = night.reasons.map(({ text }) => text).join('; ');
  const fate = used ? 'used' : `left out${why === '' ? '' : `: ${why}`}`;
  return [...moved, ...(heated ? ['heated'] : []), fate].join(', ');
}

const between = (least: number, most: number) => `${numberOf(percent(least))} to ${percent(most)}`;
const numberOf = (figure: string) => figure.split(' ')[0];

/** The interval as it is spoken: "between 88 and 189 W/K". */
function lossBetween(it: Estimate): string {
  const [low, high] = heatLossBetween(it).split(/ to | W\/K/);
  return `between ${low} and ${high} W/K`;
}

function hoursAndMinutes(minutes: number): string {
  const rounded = Math.round(minutes / 5) * 5;
  const [whole, rest] = [Math.floor(rounded / 60), rounded % 60];
  const spokenHours = `${whole} ${whole === 1 ? 'hour' : 'hours'}`;
  return rest === 0 ? spokenHours : whole === 0 ? `${rest} minutes` : `${spokenHours} ${rest} minutes`;
}
