/** What the page of the readings says. */
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { dayAndClock } from '../../src/sheet/drawing/clock.ts';
import { figures } from '../../src/words/index.ts';

export function summaryOf({ first, last, channels, nights }: ReadingsAnswer, timeZone: string): string {
  const used = nights.filter((night) => night.used).length;
  return `${figures.count(channels.length, 'channel')} from ${dayAndClock(first, timeZone)} to ${dayAndClock(last, timeZone)}; of ${figures.count(nights.length, 'night')}, ${used} were used. Each line shows the least and the greatest reading of every interval, so no peak is lost.`;
}

export const readingsMarks =
  'A hollow circle is a reading that is kept out; a measure at the head of a plot, readings left out by hand.';

/** "“Before” and “After”" */
export const inBrief = (names: readonly string[]) => listFormat.format(names.map((name) => `“${name}”`));
const listFormat = new Intl.ListFormat('en-GB');

/** "every 10 min" */
export const intervalWords = (step: number) => `every ${figures.duration(step)}`;
