/** Bringing a house: files in one by one, shown as understood, then kept or dropped. */
import { Hono } from 'hono';
import { z } from 'zod';
import { noSuchBringing } from '../jobs/bringings.ts';
import { refused } from '../refused.ts';
import type { Services } from '../services.ts';
import { tellAsItGoes } from './tellAsItGoes.ts';
import { optionalJson, wrongType } from './validate.ts';

const LONGEST_PATH = 200;
/** The stored house that is added to. */
const beginning = z.strictObject({ onto: z.string().optional() });

export const bringingsApi = ({ bringings, closing }: Services) =>
  new Hono()
    .post('/', optionalJson(beginning), async (c) =>
      c.json({ id: await bringings.start(c.req.valid('json').onto ?? null) }, 201),
    )
    .put('/:id/files/:path{.+}', async (c) => {
      if (c.req.header('content-type') !== 'application/octet-stream')
        throw wrongType('application/octet-stream');
      return c.json(await bringings.put(c.req.param('id'), insidePath(c.req.param('path')), c.req.raw.body));
    })
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

/** Names that lead elsewhere, and the end of the path of a folder. */
const NO_NAMES = ['', '.', '..'];

/** The path as it is, when it stays inside the house folder. */
function insidePath(path: string): string {
  const foreign = /[\\\0]/.test(path) || /^[A-Za-z]:/.test(path);
  if (foreign || path.split('/').some((part) => NO_NAMES.includes(part)) || path.length > LONGEST_PATH)
    throw refused(
      400,
      'path-refused',
      'This is not the path of a file inside a house folder.',
      `Name it as house.json does, such as "logs/living.csv": no "..", no backslash, at most ${LONGEST_PATH} characters.`,
    );
  return path;
}
