/** Heat that was read off a meter by eye: kept in house.json, taken out, undone. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { HouseDetail, Refusal } from '../../server/api/shapes.ts';
import { houseFolder, houseText } from './inventedHouse.ts';
import { asJson, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

let server: ServerAtHand;
let id: string;
beforeEach(async () => {
  server = serverAtHand();
  id = await server.bring(houseFolder);
});
afterEach(() => server.end());

const entry = { from: '2027-01-11T18:00', to: '2027-01-11T23:00', energyKWh: 9.6, plusMinusPercent: 3 };
const add = (heat: unknown) => server.ask(`/api/houses/${id}/heat`, asJson('POST', heat));
const take = (heat: unknown) => server.ask(`/api/houses/${id}/heat`, asJson('DELETE', heat));
const undo = () => server.ask(`/api/houses/${id}/undo`, { method: 'POST' });
const heatOf = async () => (await server.json<HouseDetail>(`/api/houses/${id}`)).house.heat;
const text = () =>
  new TextDecoder('utf-8', { ignoreBOM: true }).decode(server.services.reading.json(id) ?? undefined);

test('a reading is added to house.json, and everything else stays as it was written', async () => {
  expect((await add(entry)).status).toBe(201);
  expect(await heatOf()).toEqual([entry]);
  expect(text()).toContain(houseText.slice(1, houseText.indexOf('"loggers"')));
  expect((await add({ ...entry, from: '2027-01-12T18:00', to: '2027-01-12T20:00' })).status).toBe(201);
  expect(await heatOf()).toHaveLength(2);
});

test('a reading is undone like any other edit, byte for byte', async () => {
  const before = text();
  await add(entry);
  expect((await undo()).status).toBe(200);
  expect(text()).toBe(before);
});

test('a reading is taken out again, the last one with its key', async () => {
  await add(entry);
  const { from, to, energyKWh } = entry;
  expect((await take({ from, to, energyKWh })).status).toBe(404);
  expect((await take(entry)).status).toBe(200);
  expect(await heatOf()).toBeUndefined();
});

test('what house.json cannot hold is refused with the key and the remedy, and nothing is kept', async () => {
  for (const [wrong, key] of [
    [{ ...entry, to: '2027-01-11T17:00' }, 'heat[0].to'],
    [{ ...entry, powerW: 2000 }, 'heat[0].energyKWh'],
    [{ ...entry, energyKWh: -1 }, 'heat[0].energyKWh'],
  ] as const) {
    const response = await add(wrong);
    expect(response.status).toBe(409);
    const { problems } = (await response.json()) as Refusal;
    expect(problems[0].where?.key).toBe(key);
  }
  expect((await add({ ...entry, file: 'in.csv' })).status).toBe(400);
  expect(await heatOf()).toBeUndefined();
});
