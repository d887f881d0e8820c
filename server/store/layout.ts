/** How logs of one layout are read, remembered for the next file like it. */
import type { House } from '../../src/house.ts';
import type { Understood } from '../../src/logs/index.ts';
import { type Entry, filesOf, type Shelf } from '../../src/record/index.ts';
import type { ReadingAnswers } from '../api/shapes.ts';
import { entriesOf } from './joinedChannels.ts';
import { sha256 } from './sha256.ts';

export interface Layout {
  readonly signature: string;
  readonly answers: ReadingAnswers;
}

/** What all files of one layout have in common: the delimiter, and the headers in their order. */
export const signatureOf = ({ delimiter, columns }: Understood): string =>
  sha256(JSON.stringify([delimiter, ...columns.map(({ column }) => column)]));

/** What an entry answers of its files; null where it leaves all to the files themselves. */
export function answersOf({ columns, timeZone, clockOffsetMin, read }: Entry): ReadingAnswers | null {
  const answers = {
    ...(columns && { columns }),
    ...(timeZone && { timeZone }),
    ...(clockOffsetMin && { clockOffsetMin }),
    ...(read && { read }),
  };
  return Object.keys(answers).length > 0 ? answers : null;
}

/** One for each layout with answers. Where entries answer differently, what they agree on. */
export function layoutsOf(house: House, shelf: Shelf): Layout[] {
  const layouts = new Map<string, ReadingAnswers>();
  for (const { entry } of entriesOf(house)) {
    const answers = answersOf(entry);
    if (answers === null) continue;
    const named = filesOf(entry);
    for (const { file, reading } of shelf.accounts) {
      if (!named.includes(file) || reading.understood === null) continue;
      const signature = signatureOf(reading.understood);
      const known = layouts.get(signature);
      layouts.set(signature, known === undefined ? answers : agreed(known, answers));
    }
  }
  return Array.from(layouts, ([signature, answers]) => ({ signature, answers })).filter(
    ({ answers }) => Object.keys(answers).length > 0,
  );
}

function agreed(one: ReadingAnswers, other: ReadingAnswers): ReadingAnswers {
  const others = new Map(Object.entries(other).map(([key, value]) => [key, JSON.stringify(value)]));
  return Object.fromEntries(
    Object.entries(one).filter(([key, value]) => others.get(key) === JSON.stringify(value)),
  );
}
