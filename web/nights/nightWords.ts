/** What the page of the nights says of decisions taken by hand, and of the plainest picture. */
import type { NightResult, StageResult } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import { figures } from '../../src/words/index.ts';

export type Decision = NonNullable<House['nights']>[number];

/** "Left out by hand: a window stood open." */
export function decisionSentence({ used, why }: Decision): string {
  const reason = why === undefined ? ', without a reason' : `: ${why.replace(/[.\s]+$/, '')}`;
  return `${used ? 'Put in' : 'Left out'} by hand${reason}.`;
}

/** "the night of 11 January left out by hand" */
export const decisionInBrief = (date: string, used: boolean) =>
  `the night of ${figures.day(date)} ${used ? 'put in' : 'left out'} by hand`;

/** "The result is hand-picked: 2 nights were left out and 1 put in by hand." Null when nothing was. */
export function handPickedSentence(nights: readonly NightResult[]): string | null {
  const by = (code: string) =>
    nights.filter(({ reasons }) => reasons.some((reason) => reason.code === code)).length;
  const [out, put] = [by('left-out-by-hand'), by('put-in-by-hand')];
  if (out + put === 0) return null;
  const parts = [out > 0 ? `${out} left out` : '', put > 0 ? `${put} put in` : ''].filter(Boolean);
  return `This result is hand-picked: of its nights, ${parts.join(' and ')} by hand.`;
}

/** With its standard error: "115 ± 12 h". */
export function timeConstantOf({ timeConstantH, timeConstantSeH }: NightResult): string {
  if (timeConstantH === null) return '';
  if (timeConstantSeH === null) return figures.hours(timeConstantH);
  const digits = timeConstantSeH < 2 ? 1 : 0;
  return `${figures.decimal(timeConstantH, digits)} ± ${figures.decimal(timeConstantSeH, digits)} h`;
}

/** "used", or why not; a heater that was on is among the reasons. */
export function fateOf({ used, reasons }: NightResult): string {
  const why = reasons.map(({ text }) => text).join('; ');
  if (used) return why === '' ? 'used' : `used (${why})`;
  return why === '' ? 'left out' : `left out: ${why}`;
}

export const windSpeed = (metresPerSecond: number) => `${figures.decimal(metresPerSecond, 1)} m/s`;

/** "With 10 K between inside and outside it cools by 0.190 to 0.222 K/h (0.204)." Null without a time constant. */
export function slopeSentence({ timeConstantH: it }: StageResult): string | null {
  if (it === null) return null;
  const [low, value, high] = [it.high, it.value, it.low].map((hours) => figures.decimal(10 / hours, 3));
  return `with 10 K between inside and outside it cools by ${low} to ${high} K/h (${value}), a time constant of ${figures.hoursBetween(it)}`;
}

export const drawnBand =
  'Hatched between dotted edges: where the house as drawn would have gone from the same evening on, in the same weather. It is as wide as drawing, mass, air and sun leave open (95 %).';

/**
 * Why the first of the later starts has another interval than the stage; null where both are written alike.
 *
 * @param used the nights that the stage's own time constant rests on
 */
export function startsAndStage(stage: StageResult, used: number): string | null {
  const { laterStarts: later, timeConstantH: all } = stage;
  const first = later?.starts[0]?.timeConstantH;
  if (later === undefined || all === null || first === undefined) return null;
  const [own, ofStage] = [figures.hoursBetween(first), figures.hoursBetween(all)];
  if (own === ofStage) return null;
  const fewer = later.nights < used ? ` and rests on all ${used} used nights` : '';
  return `The time constant of the stage, ${ofStage}, also counts what the loggers themselves may be off${fewer}; the intervals here are of the scatter of these nights alone, so “as chosen” stands here as ${own}.`;
}
