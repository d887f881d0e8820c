/**
 * What a person decides about a house by hand: nights put in or left out, notes, where a stage begins and ends. Each
 * is a change of house.json and makes another version of the house, which is then assessed again and can be undone.
 */
import { type Context, Hono } from 'hono';
import { z } from 'zod';
import type { House } from '../../src/house.ts';
import { rewritten } from '../../src/houseText.ts';
import { noSuchHouse, refused } from '../refused.ts';
import type { Services } from '../services.ts';
import { summaryOf } from './summaryOf.ts';
import { checkedJson } from './validate.ts';

const LONGEST_TEXT = 1000;
const text = z.string().trim().min(1).max(LONGEST_TEXT);
const decision = z.strictObject({ used: z.boolean(), why: text.optional() });
const note = z.strictObject({ at: z.string(), text });
/** Those that are moved, by their names. */
const moved = z.strictObject({
  stages: z.array(z.strictObject({ name: z.string(), from: z.string(), to: z.string() })).min(1),
});
/** What else it may have says the schema of house.json, which the whole is held to. */
const stage = z.looseObject({ name: text, from: z.string(), to: z.string() });
const named = z.strictObject({ name: z.string() });

export const byHandApi = (services: Services) => {
  const { reading } = services;
  const change = async (c: Context, to: (house: House) => House) => {
    const id = c.req.param('id') ?? '';
    await changeHouse(services, id, to);
    const house = reading.house(id);
    if (house === null) throw noSuchHouse();
    return c.json(summaryOf(house, services));
  };
  return new Hono()
    .put('/:id/nights/:date/decision', checkedJson(decision), (c) => {
      const date = c.req.param('date');
      const { used, why } = c.req.valid('json');
      const decided = { date, used, ...(why === undefined ? {} : { why }) };
      return change(c, ({ nights = [], ...house }) => ({
        ...house,
        nights: [...nights.filter((it) => it.date !== date), decided].sort(by('date')),
      }));
    })
    .delete('/:id/nights/:date/decision', (c) => {
      const date = c.req.param('date');
      return change(c, ({ nights = [], ...house }) => {
        if (nights.every((it) => it.date !== date)) throw nothingDecided();
        return {
          ...house,
          ...list(
            'nights',
            nights.filter((it) => it.date !== date),
          ),
        };
      });
    })
    .post('/:id/notes', checkedJson(note), (c) => {
      const added = c.req.valid('json');
      return change(c, ({ notes = [], ...house }) => ({ ...house, notes: [...notes, added].sort(by('at')) }));
    })
    .delete('/:id/notes', checkedJson(note), (c) => {
      const { at, text } = c.req.valid('json');
      return change(c, ({ notes = [], ...house }) => {
        const found = notes.findIndex((it) => it.at === at && it.text.trim() === text);
        if (found < 0) throw noSuchNote();
        return { ...house, ...list('notes', notes.toSpliced(found, 1)) };
      });
    })
    .put('/:id/stages', checkedJson(moved), (c) =>
      change(c, ({ stages = [], ...house }) => {
        const moves = new Map(c.req.valid('json').stages.map((it) => [it.name, it]));
        if ([...moves.keys()].some((name) => stages.every((it) => it.name !== name))) throw noSuchStage();
        return { ...house, stages: stages.map((it) => ({ ...it, ...moves.get(it.name) })) };
      }),
    )
    .post('/:id/stages', checkedJson(stage), (c) =>
      change(c, ({ stages = [], ...house }) => ({
        ...house,
        stages: [...stages, c.req.valid('json')].sort(by('from')),
      })),
    )
    .delete('/:id/stages', checkedJson(named), (c) => {
      const { name } = c.req.valid('json');
      return change(c, ({ stages = [], ...house }) => {
        if (stages.every((it) => it.name !== name)) throw noSuchStage();
        return {
          ...house,
          ...list(
            'stages',
            stages.filter((it) => it.name !== name),
          ),
        };
      });
    });
};

/** Goes the way of everything that is brought onto a house: checked as a whole, stored wholly or not at all. */
export async function changeHouse(
  { reading, bringings }: Services,
  id: string,
  to: (house: House) => House,
): Promise<void> {
  const bringing = await bringings.start(id);
  try {
    const json = reading.json(id);
    if (json === null) throw noSuchHouse();
    const before = new TextDecoder().decode(json);
    const after = rewritten(before, to(JSON.parse(before)));
    await bringings.put(bringing, 'house.json', new Blob([after]).stream());
    await bringings.keep(bringing);
  } catch (error) {
    await bringings.drop(bringing);
    throw error;
  }
}

/** An empty list is none, and its key goes with it. */
const list = <K extends string, T>(key: K, of: readonly T[]): { [it in K]?: T[] } =>
  of.length === 0 ? {} : ({ [key]: [...of] } as { [it in K]: T[] });

const by =
  <K extends string>(key: K) =>
  (a: Readonly<Record<K, string>>, b: Readonly<Record<K, string>>) =>
    a[key].localeCompare(b[key]);

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
