/**
 * What a person decides about a house by hand: nights put in or left out, notes, where a stage begins and ends. Each
 * is a change of house.json and makes another version of the house, which is then assessed again and can be undone.
 */
import { type Context, Hono } from 'hono';
import { applyEdits, type JSONPath, modify } from 'jsonc-parser';
import { z } from 'zod';
import type { House } from '../../src/house.ts';
import { noSuchHouse, refused } from '../refused.ts';
import type { Services } from '../services.ts';
import { summaryOf } from './summaryOf.ts';
import { checkedJson } from './validate.ts';

const LONGEST_TEXT = 1000;
const text = z.string().trim().min(1).max(LONGEST_TEXT);
const decision = z.strictObject({ used: z.boolean(), why: text.optional() });
const note = z.strictObject({ at: z.string(), text });
/** Those that are moved, by their names. */
const stages = z.strictObject({
  stages: z.array(z.strictObject({ name: z.string(), from: z.string(), to: z.string() })).min(1),
});

/** What stands at a place of house.json from now on; undefined takes it away. */
export interface Edit {
  readonly path: JSONPath;
  readonly value: unknown;
}

export const byHandApi = (services: Services) => {
  const { reading } = services;
  const change = async (c: Context, edits: (house: House) => readonly Edit[]) => {
    const id = c.req.param('id') ?? '';
    await changeHouse(services, id, edits);
    const house = reading.house(id);
    if (house === null) throw noSuchHouse();
    return c.json(summaryOf(house, services));
  };
  return new Hono()
    .put('/:id/nights/:date/decision', checkedJson(decision), (c) => {
      const date = c.req.param('date');
      const { used, why } = c.req.valid('json');
      const decided = { date, used, ...(why === undefined ? {} : { why }) };
      return change(c, ({ nights = [] }) => [
        listAt('nights', [...nights.filter((it) => it.date !== date), decided].sort(byDate)),
      ]);
    })
    .delete('/:id/nights/:date/decision', (c) => {
      const date = c.req.param('date');
      return change(c, ({ nights = [] }) => {
        if (nights.every((it) => it.date !== date)) throw nothingDecided();
        return [
          listAt(
            'nights',
            nights.filter((it) => it.date !== date),
          ),
        ];
      });
    })
    .post('/:id/notes', checkedJson(note), (c) => {
      const added = c.req.valid('json');
      return change(c, ({ notes = [] }) => [
        listAt(
          'notes',
          [...notes, added].sort((a, b) => a.at.localeCompare(b.at)),
        ),
      ]);
    })
    .delete('/:id/notes', checkedJson(note), (c) => {
      const { at, text } = c.req.valid('json');
      return change(c, ({ notes = [] }) => {
        const found = notes.findIndex((it) => it.at === at && it.text.trim() === text);
        if (found < 0) throw noSuchNote();
        return [listAt('notes', notes.toSpliced(found, 1))];
      });
    })
    .put('/:id/stages', checkedJson(stages), (c) =>
      change(c, (house) =>
        c.req.valid('json').stages.flatMap(({ name, from, to }) => {
          const found = house.stages?.findIndex((it) => it.name === name) ?? -1;
          if (found < 0) throw noSuchStage();
          return [
            { path: ['stages', found, 'from'], value: from },
            { path: ['stages', found, 'to'], value: to },
          ];
        }),
      ),
    );
};

/** Goes the way of everything that is brought onto a house: checked as a whole, stored wholly or not at all. */
export async function changeHouse(
  { reading, bringings }: Services,
  id: string,
  edits: (house: House) => readonly Edit[],
): Promise<void> {
  const bringing = await bringings.start(id);
  try {
    const json = reading.json(id);
    if (json === null) throw noSuchHouse();
    const before = new TextDecoder().decode(json);
    const after = edits(JSON.parse(before)).reduce(edited, before);
    await bringings.put(bringing, 'house.json', new Blob([after]).stream());
    await bringings.keep(bringing);
  } catch (error) {
    await bringings.drop(bringing);
    throw error;
  }
}

/** Everything else stays as the person has written it. */
const edited = (json: string, { path, value }: Edit): string =>
  applyEdits(json, modify(json, path, value, { formattingOptions: { insertSpaces: true, tabSize: 2 } }));

const listAt = (key: 'nights' | 'notes', list: readonly unknown[]): Edit => ({
  path: [key],
  value: list.length === 0 ? undefined : list,
});

const byDate = (a: { readonly date: string }, b: { readonly date: string }) => a.date.localeCompare(b.date);

const nothingDecided = () =>
  refused(
    404,
    'night-not-decided',
    'Nothing was decided by hand about this night.',
    'Load the page again to see how it stands.',
  );

const noSuchNote = () =>
  refused(
    404,
    'no-such-note',
    'There is no such note any more.',
    'Load the page again to see those there are.',
  );

const noSuchStage = () =>
  refused(
    404,
    'no-such-stage',
    'There is no stage of this name any more.',
    'Load the page again to see those there are.',
  );
