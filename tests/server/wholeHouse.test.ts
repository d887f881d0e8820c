/** The build-ups kept: another value of house.json, in the handwriting of the person. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { HouseDetail, Refusal } from '../../server/api/shapes.ts';
import { house, houseFolder } from './inventedHouse.ts';
import { asJson, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

/** In one line where a machine would write many, and the keys in an order of its own. */
const written = `{
    "name": "Test house",   "volumeM3": 240,
    "location": { "timeZone": "Europe/London", "latitude": 52, "longitude": -1 },
    "loggers": ${JSON.stringify(house.loggers)}
}
`;

let server: ServerAtHand;
let id: string;
beforeEach(async () => {
  server = serverAtHand();
  id = await server.bring({ ...houseFolder, 'house.json': written });
});
afterEach(() => server.end());

const stored = () => new TextDecoder().decode(server.services.reading.json(id) ?? undefined);
const put = (was: unknown, changed: unknown) =>
  server.ask(`/api/houses/${id}/house`, asJson('PUT', { was, house: changed }));
const was = async () => (await server.json<HouseDetail>(`/api/houses/${id}`)).house;

test('what is changed is changed, and all else stays as it was written', async () => {
  const before = await was();
  expect((await put(before, { ...before, volumeM3: 250 })).status).toBe(200);
  const answer = await server.ask(`/api/houses/${id}/house.json`);
  expect(await answer.text()).toBe(written.replace('240', '250'));
});

test('what was changed elsewhere meanwhile is not written over', async () => {
  const before = await was();
  await put(before, { ...before, volumeM3: 250 });
  const late = await put(before, { ...before, name: 'Another' });
  expect(late.status).toBe(409);
  expect(((await late.json()) as Refusal).problems[0].code).toBe('house-changed-elsewhere');
  expect(stored()).toBe(written.replace('240', '250'));
});

test('what is no house is refused with the key at fault, and nothing of it stays', async () => {
  const before = await was();
  const refusal = await put(before, { ...before, volumeM3: -1 });
  expect(refusal.status).toBe(409);
  expect(JSON.stringify(await refusal.json())).toMatch(/volumeM3/);
  expect(stored()).toBe(written);
});
