import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Refusal } from '../../server/api/shapes.ts';
import { sha256 } from '../../server/store/sha256.ts';
import { readPack } from '../../src/sheet/pack/readPack.ts';
import { houseFolder } from '../server/inventedHouse.ts';
import { heldCalculation, type ServerAtHand, serverAtHand, until } from '../server/serverAtHand.ts';

let server: ServerAtHand;
beforeEach(() => {
  server = serverAtHand();
});
afterEach(() => server.end());

const FILES = ['sheet.html', 'first-page.html', 'pack.zip'];

describe('what is handed over of a stored house', () => {
  let id: string;
  beforeEach(async () => {
    id = await server.bring(houseFolder);
    await until(() => server.services.reading.house(id)?.outcome != null);
  });

  test.each(FILES.slice(0, 2))(
    '%s is a page that brings its own style and asks for nothing',
    async (file) => {
      const response = await server.ask(`/api/houses/${id}/${file}`);
      expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8');
      const text = await response.text();
      expect(text).toContain('Test house');
      expect(text).not.toMatch(/\b(href=|<script|https?:)/);
    },
  );

  test('the pack holds the house as it was brought, the assessment as it stands, and hashes that fit', async () => {
    const bytes = new Uint8Array(await (await server.ask(`/api/houses/${id}/pack.zip`)).arrayBuffer());
    const pack = await readPack(bytes, async (it) => sha256(it), 'Stillwarm 0.0.1');
    if (pack.kind !== 'pack') throw new Error(JSON.stringify(pack.problems));
    expect([...pack.files.keys()].toSorted()).toEqual(Object.keys(houseFolder).toSorted());
    const packed = JSON.parse(new TextDecoder().decode(pack.all.get('handover/assessment.json')));
    const { assessment } = await server.json<{ assessment: unknown }>(`/api/houses/${id}`);
    expect(packed).toEqual(assessment);
  });
});

test.each(FILES)('%s of a house that is not there is refused', async (file) => {
  const response = await server.ask(`/api/houses/nobody/${file}`);
  expect(response.status).toBe(404);
});

test.each(FILES)('%s is refused while the house is not assessed', async (file) => {
  await server.end();
  server = serverAtHand({ calculate: heldCalculation().calculate });
  const id = await server.bring(houseFolder);
  const response = await server.ask(`/api/houses/${id}/${file}`);
  expect(response.status).toBe(409);
  expect(((await response.json()) as Refusal).problems[0].code).toBe('not-assessed');
});
