/** The nights of a house as lines to draw. */
import { Hono } from 'hono';
import { noSuchHouse } from '../refused.ts';
import type { Services } from '../services.ts';
import type { NightsAnswer } from './shapes.ts';

export const nightsApi = ({ reading }: Services) =>
  new Hono().get('/:id/nights', (c) => {
    const id = c.req.param('id');
    if (reading.house(id) === null) throw noSuchHouse();
    const answer: NightsAnswer = { curves: reading.curves(id).map((curve) => JSON.parse(curve)) };
    return c.json(answer);
  });
