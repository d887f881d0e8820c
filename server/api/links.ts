/** Links of a house for those who live in it, and until when the house is kept. */
import { type Context, Hono } from 'hono';
import { z } from 'zod';
import type { Access } from '../access/access.ts';
import { linkScopes, newLink } from '../access/links.ts';
import { noSuchHouse, refused } from '../refused.ts';
import type { Services } from '../services.ts';
import type { LinksAnswer, MadeLink } from './accessShapes.ts';
import { checkedJson } from './validate.ts';

const DAY = 86_400; // [s]
const LONGEST_DAYS = 366;
/** More are a mistake. */
const MOST_LINKS = 100;
const wanted = z.strictObject({
  scope: z.enum(linkScopes),
  whose: z.string().trim().max(100),
  days: z.int().min(1).max(LONGEST_DAYS),
});
const kept = z.strictObject({ until: z.iso.date().nullable() });

export const linksApi = ({ reading, writer }: Services, access: Access) => {
  const find = (id: string) => {
    const house = reading.house(id);
    if (house === null) throw noSuchHouse();
    return house;
  };
  const answerOf = (c: Context, id: string): LinksAnswer => ({
    links: reading.links(id),
    served: servedBy(access, c.req.header('host') ?? ''),
    keepUntil: reading.keepUntil(id),
  });
  return new Hono()
    .get('/:id/links', (c) => c.json(answerOf(c, find(c.req.param('id')).id)))
    .post('/:id/links', checkedJson(wanted), async (c) => {
      const { id } = find(c.req.param('id'));
      const { scope, whose, days } = c.req.valid('json');
      if (reading.links(id).length >= MOST_LINKS) throw tooMany();
      const { token, hash } = newLink();
      const made = Date.now() / 1000;
      await writer.addLink(id, { hash, scope, whose, made, until: made + days * DAY });
      return c.json({ path: `/l/${token}` } satisfies MadeLink, 201);
    })
    .delete('/:id/links/:number', async (c) => {
      const { id } = find(c.req.param('id'));
      const number = Number(c.req.param('number'));
      if (reading.links(id).every((link) => link.number !== number)) throw noSuchLink();
      await writer.removeLink(id, number);
      return c.json(answerOf(c, id));
    })
    .put('/:id/keep-until', checkedJson(kept), async (c) => {
      const { id } = find(c.req.param('id'));
      await writer.keepUntil(id, c.req.valid('json').until);
      return c.json(answerOf(c, id));
    });
};

function servedBy({ door, secure, reach }: Access, host: string): LinksAnswer['served'] {
  if (door === null) return { by: null, addresses: [] };
  if (reach.origin !== null) return { by: secure ? 'https' : 'http', addresses: [reach.origin] };
  const port = /:\d+$/.exec(host)?.[0] ?? '';
  return { by: 'http', addresses: reach.addresses().map((it) => `http://${it}${port}`) };
}

const tooMany = () =>
  refused(
    409,
    'too-many-links',
    `This house has ${MOST_LINKS} links already.`,
    'Take back those that nobody needs.',
  );

const noSuchLink = () =>
  refused(
    404,
    'no-such-link',
    'There is no such link any more.',
    'Load the page again to see those there are.',
  );
