/** The answer in sentences a homeowner understands: last night, the heat loss against the drawing, what a change did. */
import type { Assessment, Estimate, NightResult, StageResult, Verdict } from '../assessment.ts';
import {
  count,
  day,
  decimal,
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

/** What a stage is set beside; without a figure of its own as tested, where that is given. */
export const drawnBeside = ({ gap }: StageResult, design: Assessment['design']): number | null =>
  gap?.drawnWK ?? (design && (design.heatLossAsTestedWK ?? design.heatLossWK));

/** The answer of one stage. */
export const stageAnswer = (stage: StageResult, design: Assessment['design']): Answer => ({
  heatLossWK: stage.heatLossWK,
  drawnWK: drawnBeside(stage, design),
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
  if (verdict === 'meets' && ratio !== null && ratio.high < 1)
    return 'It loses less than drawn: better than it had to be.';
  return verdictSentences[verdict];
}

/**
 * "As drawn it loses 103 W/K with vents shut and fans off, as it was tested, and 119 W/K in use. …"
 *
 * @returns null where the drawing has one figure alone
 */
export function twoLossesSentence({
  heatLossWK: inUse,
  heatLossAsTestedWK: tested,
}: TheDesign): string | null {
  if (tested === null || heatLoss(tested) === heatLoss(inUse)) return null;
  return `As drawn it loses ${heatLoss(tested)} with vents shut and fans off, as it was tested, and ${heatLoss(inUse)} in use; what was measured is set beside the first.`;
}
type TheDesign = NonNullable<Assessment['design']>;

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
 * "In the night of 12 February it lost 1.2 K in 9 hours 10 minutes while it was 4.1 °C outside."
 *
 * @param meanOutside over the hours of the fall [°C]; null where it is not known
 * @param now         the reader's clock [ms since 1970 UTC]: the night that has just gone is "last night"; null on paper
 * @returns null when nothing of that night could be measured
 */
export function nightSentence(
  night: NightResult,
  meanOutside: number | null,
  now: number | null = null,
): string | null {
  const { date, from, to, dropK, meanDifferenceK } = night;
  if (dropK === null || from === null || to === null) return null;
  const moved = `${dropK < 0 ? 'gained' : 'lost'} ${kelvins(Math.abs(dropK))}`;
  const outside =
    meanOutside !== null
      ? ` while it was ${temperature(meanOutside)} outside`
      : meanDifferenceK !== null
        ? ` while it was ${kelvins(meanDifferenceK)} warmer inside than outside`
        : '';
  const ago = now === null ? Number.NaN : now - Date.parse(to);
  const opening = ago >= 0 && ago < DAY ? 'Last night' : `In the night of ${day(date)}`;
  return `${opening} it ${moved} in ${hoursAndMinutes((Date.parse(to) - Date.parse(from)) / 60_000)}${outside}.`;
}

/**
 * "Built as drawn it would have lost 1.2 to 1.6 K."
 *
 * @returns null where that cannot be worked out
 */
export function foretoldSentence({ foretoldDropK: it }: NightResult): string | null {
  return it === undefined ? null : `Built as drawn it would have lost ${foretoldFall(it)}.`;
}

/** "1.2 to 1.6 K", "at most 1.6 K", "hardly anything" */
export function foretoldFall({ low, high }: Estimate): string {
  if (high < LEAST_FALL) return 'hardly anything';
  return low < LEAST_FALL ? `at most ${kelvins(high)}` : `${decimal(low, 1)} to ${kelvins(high)}`;
}
/** What is written as nothing [K]. */
const LEAST_FALL = 0.05;

/** What one night says of the drawing, which is little; null where the drawing's fall cannot be worked out. */
export function againstDrawnSentence({ dropK, foretoldDropK: it }: NightResult): string | null {
  if (it === undefined || dropK === null) return null;
  if (dropK > it.high) return 'In this night it lost more than the drawing accounts for.';
  if (dropK < it.low) return 'In this night it lost less than drawn.';
  return 'What was measured lies within what the drawing lets expect, so this night alone does not tell the two apart.';
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

/**
 * "Last reading 3 days ago.", and after some weeks the day itself.
 *
 * @param now the reader's clock [ms since 1970 UTC]; null where it stands on paper
 */
export function lastReadingSentence(lastReading: string | null, now: number | null = null): string {
  if (lastReading === null) return 'No reading yet.';
  const ago = now === null ? Number.NaN : now - Date.parse(lastReading);
  if (!(ago >= 0 && ago < MOST_WEEKS * 7 * DAY)) return `Last reading ${moment(lastReading)}.`;
  if (ago < HOUR) return 'Last reading within the hour.';
  const [n, unit] =
    ago < DAY
      ? [Math.floor(ago / HOUR), 'hour']
      : ago < 14 * DAY
        ? [Math.floor(ago / DAY), 'day']
        : [Math.floor(ago / (7 * DAY)), 'week'];
  return `Last reading ${count(n, unit)} ago.`;
}
const HOUR = 3_600_000; // [ms]
const DAY = 24 * HOUR;
const MOST_WEEKS = 9;

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
