/** Heat read off a meter by eye, where there is no log of it: put into house.json and taken out again. */
import { isDeepStrictEqual } from 'node:util';
import { Hono } from 'hono';
import { z } from 'zod';
import type { HeatEntry, House } from '../../src/house.ts';
import { noSuchHouse, refused } from '../refused.ts';
import type { Services } from '../services.ts';
import { changeHouse } from './byHand.ts';
import { summaryOf } from './summaryOf.ts';
import { checkedJson } from './validate.ts';

/** The form of it; what the figures may be says the schema of house.json. */
const readByEye = z.strictObject({
  from: z.string(),
  to: z.string(),
  energyKWh: z.number().optional(),
  powerW: z.number().optional(),
  plusMinusPercent: z.number().optional(),
});

export const heatApi = (services: Services) => {
  const { reading } = services;
  const change = async (id: string, to: (house: House) => House) => {
    await changeHouse(services, id, to);
    const house = reading.house(id);
    if (house === null) throw noSuchHouse();
    return summaryOf(house, services);
  };
  return new Hono()
    .post('/:id/heat', checkedJson(readByEye), async (c) => {
      const entry = c.req.valid('json');
      return c.json(await change(c.req.param('id'), (house) => added(entry, house)), 201);
    })
    .delete('/:id/heat', checkedJson(readByEye), async (c) => {
      const entry = c.req.valid('json');
      return c.json(await change(c.req.param('id'), (house) => removed(entry, house)));
    });
};

const added = (entry: HeatEntry, { heat = [], ...house }: House): House => ({
  ...house,
  heat: [...heat, entry],
});

function removed(entry: HeatEntry, { heat = [], ...house }: House): House {
  const at = heat.findIndex((it) => isDeepStrictEqual(it, entry));
  if (at < 0) throw noSuchHeat();
  return heat.length === 1 ? house : { ...house, heat: heat.toSpliced(at, 1) };
}

const noSuchHeat = () =>
  refused(
    404,
    'no-such-heat',
    'There is no such meter reading any more.',
    'Load the page again to see those there are.',
  );
