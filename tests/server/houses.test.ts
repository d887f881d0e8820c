import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type {
  HouseDetail,
  HouseSummary,
  HousesAnswer,
  NightsAnswer,
  Refusal,
} from '../../server/api/shapes.ts';
import { begin } from '../../server/services.ts';
import { house, houseFolder } from './inventedHouse.ts';
import { asJson, heldCalculation, type ServerAtHand, serverAtHand, until } from './serverAtHand.ts';

let server: ServerAtHand;
let id: string;
const stored = () => server.services.reading.house(id);
const assessed = () => until(() => stored()?.outcome != null);
const houses = async () => (await server.json<{ houses: HouseSummary[] }>('/api/houses')).houses;

beforeEach(async () => {
  server = serverAtHand();
  id = await server.bring(houseFolder);
  await assessed();
});
afterEach(() => server.end());

describe('a house that was kept', () => {
  test('is listed with its answer and its last reading in its own time', async () => {
    const [summary] = await houses();
    expect(summary).toMatchObject({
      id,
      name: 'Test house',
      invented: false,
      away: false,
      lastReading: '2027-01-13T11:50:00+00:00',
      state: { kind: 'assessed' },
      answer: { stage: 'Whole record', heatLossWK: null, drawnWK: null, verdict: null },
    });
    // Derivation: the invented fall has a time constant of 40 h; rounding to 0.01 K leaves well under 1 h.
    expect(summary.answer?.timeConstantH?.value).toBeCloseTo(40, 0);
  });

  test('is told whole: house.json, assessment, files with size and SHA-256', async () => {
    const detail = await server.json<HouseDetail>(`/api/houses/${id}`);
    expect(detail.house).toEqual(house);
    expect(detail.assessment?.house).toBe('Test house');
    expect(detail.files.map(({ file, bytes }) => [file, bytes])).toEqual([
      ['in.csv', new TextEncoder().encode(houseFolder['in.csv']).length],
      ['logs/out.csv', new TextEncoder().encode(houseFolder['logs/out.csv']).length],
    ]);
    for (const { sha256 } of detail.files) expect(sha256).toMatch(/^[0-9a-f]{64}$/);
  });

  test('has its nights as curves', async () => {
    const { curves } = await server.json<NightsAnswer>(`/api/houses/${id}/nights`);
    expect(curves.map(({ date }) => date)).toEqual(['2027-01-10', '2027-01-11', '2027-01-12']);
    expect(curves.every(({ time, fitted }) => time.length === fitted.length)).toBe(true);
  });

  test('is put away and brought back', async () => {
    const away = (value: boolean) =>
      server.json<HouseSummary>(`/api/houses/${id}/away`, asJson('PUT', { away: value }));
    expect((await away(true)).away).toBe(true);
    expect((await houses())[0].away).toBe(true);
    expect((await away(false)).away).toBe(false);
  });

  test('is deleted with everything that belongs to it', async () => {
    expect((await server.ask(`/api/houses/${id}`, { method: 'DELETE' })).status).toBe(204);
    expect(await houses()).toEqual([]);
    for (const table of tables)
      expect([table, server.db.prepare(`SELECT count(*) FROM ${table}`).pluck().get()]).toEqual([table, 0]);
  });
});

/** All that hold anything of a house. */
const tables = [
  'house',
  'version',
  'file',
  'original',
  'channel',
  'day',
  'day_readings',
  'day_doubts',
  'outcome',
  'night',
];

describe('what cannot be answered is refused', () => {
  test.each([
    ['GET', ''],
    ['DELETE', ''],
    ['GET', '/nights'],
    ['GET', '/readings'],
    ['GET', '/folder.zip'],
    ['POST', '/assessment'],
    ['DELETE', '/assessment'],
    ['GET', '/progress'],
    ['POST', '/undo'],
  ])('with 404 for a house that is not there: %s %s', async (method, path) => {
    const response = await server.ask(`/api/houses/nobody${path}`, { method });
    expect(response.status).toBe(404);
    expect(((await response.json()) as Refusal).problems[0].code).toBe('no-such-house');
  });

  test('with 400 for a body that says something else', async () => {
    const put = (value: unknown) => server.ask(`/api/houses/${id}/away`, asJson('PUT', value));
    for (const value of [{}, { away: 'yes' }, { away: true, more: 1 }, null])
      expect((await put(value)).status).toBe(400);
    const broken = { ...asJson('PUT', {}), body: '{' };
    expect((await server.ask(`/api/houses/${id}/away`, broken)).status).toBe(400);
  });

  test('with 415 for a body that is not called JSON', async () => {
    const form = { ...asJson('PUT', { away: true }), headers: { 'Content-Type': 'text/plain' } };
    expect((await server.ask(`/api/houses/${id}/away`, form)).status).toBe(415);
  });

  test('with 413 for a body above a megabyte', async () => {
    const large = asJson('PUT', { away: 'x'.repeat(1024 * 1024) });
    expect((await server.ask(`/api/houses/${id}/away`, large)).status).toBe(413);
  });
});

describe('the demonstration house', () => {
  const first = () => begin(server.services);
  const demonstrationOf = ({ services }: ServerAtHand) => services.reading.demonstration();
  const demonstration = () => demonstrationOf(server);

  beforeEach(async () => {
    await server.end();
    server = serverAtHand();
    await first();
    await until(() => demonstration() !== null);
  }, 60_000); // ends what the test before still calculates

  test('is told to be on its way until it is there: nobody waits for it', async () => {
    await server.end();
    const { held, calculate } = heldCalculation('prepare');
    server = serverAtHand({ calculate });
    await first();
    expect(await server.json<HousesAnswer>('/api/houses')).toEqual({ houses: [], demonstrationComing: true });
    held[0].end();
    await until(() => demonstration() !== null && !server.services.demonstration.isComing());
    expect(await server.json('/api/houses')).toMatchObject({
      houses: [{ invented: true }],
      demonstrationComing: false,
    });
  });

  test('that could not be read is told to the terminal, and the houses are listed all the same', async () => {
    await server.end();
    const { held, calculate } = heldCalculation('prepare');
    server = serverAtHand({ calculate });
    await first();
    held[0].breakDown();
    await until(() => server.told.length > 0);
    expect(server.told.join()).toMatch(/demonstration house was not stored/);
    expect(await server.json('/api/houses')).toEqual({ houses: [], demonstrationComing: false });
  });

  test('that was not stored before the program was stopped comes at the next start', async () => {
    await server.end();
    const { calculate } = heldCalculation('prepare');
    const stopped = serverAtHand({ calculate });
    await begin(stopped.services);
    await stopped.services.close();
    expect([stopped.told, demonstrationOf(stopped)]).toEqual([[], null]);
    server = serverAtHand({}, stopped.folder);
    await first();
    await until(() => demonstration() !== null);
    await stopped.end();
  });

  test('is there at the first start, marked as invented, and gets assessed', async () => {
    await until(() => server.services.reading.houses()[0].outcome !== null);
    const [summary] = await houses();
    expect(summary).toMatchObject({ invented: true, state: { kind: 'assessed' } });
    expect(summary.answer?.verdict).not.toBeUndefined();
  });

  test('is not stored a second time, nor after it was deleted', async () => {
    await first();
    expect(await houses()).toHaveLength(1);
    await server.ask(`/api/houses/${demonstration()}`, { method: 'DELETE' });
    await first();
    expect(await houses()).toEqual([]);
  });

  test('comes again when it is asked for, once', async () => {
    expect((await server.ask('/api/demonstration', { method: 'POST' })).status).toBe(409);
    await server.ask(`/api/houses/${demonstration()}`, { method: 'DELETE' });
    const response = await server.ask('/api/demonstration', { method: 'POST' });
    expect(response.status).toBe(201);
    expect(((await response.json()) as { id: string }).id).toBe(demonstration());
    expect((await houses())[0].invented).toBe(true);
  });

  test('comes once when it is asked for twice at the same time', async () => {
    await server.ask(`/api/houses/${demonstration()}`, { method: 'DELETE' });
    const twice = await Promise.all([1, 2].map(() => server.ask('/api/demonstration', { method: 'POST' })));
    expect(twice.map(({ status }) => status)).toEqual([201, 201]);
    expect(await twice[0].json()).toEqual(await twice[1].json());
    expect(await houses()).toHaveLength(1);
  });
});
