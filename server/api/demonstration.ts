/** The demonstration house, stored again after it was deleted. */
import { Hono } from 'hono';
import { refused } from '../refused.ts';
import type { Services } from '../services.ts';

export const demonstrationApi = ({ reading, demonstration }: Services) =>
  new Hono().post('/', async (c) => {
    const there = () => reading.demonstration() !== null;
    if (there())
      throw refused(
        409,
        'demonstration-there',
        'The demonstration house is here already.',
        'Bring it back from the houses that were put away.',
      );
    return c.json({ id: await demonstration.store() }, 201);
  });
