import { hc } from 'hono/client';
import { expect, test } from 'vitest';
import type { Api } from '../../server/api/index.ts';
import type { BringingPreview, HouseDetail, ReadingsAnswer } from '../../server/api/shapes.ts';
import { houseFolder } from './inventedHouse.ts';
import { serverAtHand } from './serverAtHand.ts';

test('the client made from the routes’ own types knows addresses and answers', async () => {
  const server = serverAtHand();
  const asked = (input: string | URL | Request, init?: RequestInit) => {
    const { pathname, search } = new URL(String(input));
    return server.ask(pathname + search, {
      ...init,
      headers: Object.fromEntries(new Headers(init?.headers)),
    });
  };
  const client = hc<Api>('http://localhost:8620/api', { fetch: asked });
  const { id: bringing } = await (await client.bringings.$post({ json: {} })).json();
  const waiting: BringingPreview = await (
    await client.bringings[':id'].$get({ param: { id: bringing } })
  ).json();
  expect(waiting.ready).toBe(false);

  const id = await server.bring(houseFolder);
  const detail: HouseDetail = await (await client.houses[':id'].$get({ param: { id } })).json();
  expect(detail.name).toBe('Test house');
  const readings: ReadingsAnswer = await (
    await client.houses[':id'].readings.$get({ param: { id }, query: { points: 20 } })
  ).json();
  expect(readings.time.length).toBeLessThanOrEqual(20);
  const put = await client.houses[':id'].away.$put({ param: { id }, json: { away: true } });
  expect((await put.json()).away).toBe(true);
  await server.end();
});
