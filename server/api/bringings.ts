/** Bringing a house: files in one by one, shown as understood, then kept or dropped. */
import { Hono } from 'hono';
import { z } from 'zod';
import { noSuchBringing } from '../jobs/bringingRefusals.ts';
import type { Services } from '../services.ts';
import { insidePath } from './insidePath.ts';
import { tellAsItGoes } from './tellAsItGoes.ts';
import { bytesOnly, optionalJson } from './validate.ts';

/** The stored house that is added to. */
const beginning = z.strictObject({ onto: z.string().optional() });

export const bringingsApi = ({ bringings, closing }: Services) =>
  new Hono()
    .post('/', optionalJson(beginning), async (c) =>
      c.json({ id: await bringings.start(c.req.valid('json').onto ?? null) }, 201),
    )
    .put('/:id/files/:path{.+}', bytesOnly, async (c) =>
      c.json(await bringings.put(c.req.param('id'), insidePath(c.req.param('path')), c.req.raw.body)),
    )
    .get('/:id', async (c) => c.json(await bringings.preview(c.req.param('id'))))
    .get('/:id/progress', (c) => {
      const id = c.req.param('id');
      if (bringings.progress(id) === null) throw noSuchBringing();
      return tellAsItGoes(c, {
        now: () => bringings.progress(id),
        watch: (changed) => bringings.watch(id, changed),
        closing,
      });
    })
    .post('/:id/keep', async (c) => c.json({ id: await bringings.keep(c.req.param('id')) }, 201))
    .delete('/:id', async (c) => {
      await bringings.drop(c.req.param('id'));
      return c.body(null, 204);
    });
