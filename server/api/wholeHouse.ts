/** The whole house.json: as it is written, and as another value, of which all that stays is left as it was written. */
import { isDeepStrictEqual } from 'node:util';
import { Hono } from 'hono';
import { z } from 'zod';
import type { House } from '../../src/house.ts';
import { noSuchHouse, refused } from '../refused.ts';
import type { Services } from '../services.ts';
import { changeHouse } from './byHand.ts';
import { summaryOf } from './summaryOf.ts';
import { checkedJson } from './validate.ts';

/** The form of it; what a house may be says the schema of house.json, which the whole is held to. */
const changed = z.strictObject({
  was: z.looseObject({}).describe('house.json as it was when the change began'),
  house: z.looseObject({}).describe('house.json as it is to be'),
});

export const wholeHouseApi = (services: Services) =>
  new Hono()
    .get('/:id/house.json', (c) => {
      const json = services.reading.json(c.req.param('id'));
      if (json === null) throw noSuchHouse();
      return c.body(new Uint8Array(json), 200, { 'Content-Type': 'application/json' });
    })
    .put('/:id/house', checkedJson(changed), async (c) => {
      const id = c.req.param('id');
      const { was, house } = c.req.valid('json');
      await changeHouse(services, id, (stored) => {
        if (!isDeepStrictEqual(stored, was)) throw changedElsewhere();
        return house as unknown as House;
      });
      const kept = services.reading.house(id);
      if (kept === null) throw noSuchHouse();
      return c.json(summaryOf(kept, services));
    });

const changedElsewhere = () =>
  refused(
    409,
    'house-changed-elsewhere',
    'This house was changed elsewhere since this page was opened, so these changes were not kept.',
    'Open the page again in another tab, and make them there.',
  );
