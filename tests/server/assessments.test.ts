import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { HouseState, HouseSummary, Progress } from '../../server/api/shapes.ts';
import { begin } from '../../server/services.ts';
import { houseFolder } from './inventedHouse.ts';
import { heldCalculation, type ServerAtHand, serverAtHand, until } from './serverAtHand.ts';

let server: ServerAtHand;
let held: ReturnType<typeof heldCalculation>['held'];
let id: string;
const state = async () => (await server.json<HouseSummary>(`/api/houses/${id}`)).state;
const assess = () => server.ask(`/api/houses/${id}/assessment`, { method: 'POST' });
const cancel = () => server.json<Progress>(`/api/houses/${id}/assessment`, { method: 'DELETE' });
const ended = () => until(() => server.services.reading.house(id)?.outcome != null);

beforeEach(async () => {
  const calculation = heldCalculation();
  held = calculation.held;
  server = serverAtHand({ calculate: calculation.calculate });
  id = await server.bring(houseFolder);
});
afterEach(() => server.end());

/** The states that are told, one after the other. */
function progress(response: Response) {
  const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader();
  let text = '';
  const next = async (): Promise<Progress | null> => {
    const end = text.indexOf('\n\n');
    if (end >= 0) {
      const data = /^data: (.*)$/m.exec(text.slice(0, end))?.[1] ?? '';
      text = text.slice(end + 2);
      return JSON.parse(data);
    }
    const chunk = await reader?.read();
    if (chunk === undefined || chunk.done) return null;
    text += chunk.value;
    return next();
  };
  return { next, leave: () => reader?.cancel() };
}

describe('progress', () => {
  test('tells the state at once, then every step in words and as a share that only rises', async () => {
    const response = await server.ask(`/api/houses/${id}/progress`);
    expect(response.headers.get('content-type')).toMatch(/^text\/event-stream/);
    const { next, leave } = progress(response);
    const states = [(await next())?.state];
    for (const step of [
      { kind: 'read', file: 'in.csv', done: 0, of: 2 },
      { kind: 'read', file: 'logs/out.csv', done: 1, of: 2 },
      { kind: 'nights' },
      { kind: 'stage', name: 'As built', done: 0, of: 2 },
      { kind: 'stage', name: 'With shutters', done: 1, of: 2 },
      { kind: 'network', done: 0, of: 25 },
      { kind: 'network', done: 1, of: 25 },
    ] as const) {
      held[0].step(step);
      states.push((await next())?.state);
    }
    const work = states.map((it) => (it?.kind === 'assessing' ? it : null));
    expect(work.map((it) => it?.what)).toEqual([
      'Taking the logs out of the store.',
      'Reading in.csv, file 1 of 2.',
      'Reading logs/out.csv, file 2 of 2.',
      'Looking at every night for one that can be judged.',
      'Working out what the house loses at the stage “As built”, 1 of 2.',
      'Working out what the house loses at the stage “With shutters”, 2 of 2.',
      'Fitting the house as drawn to what was logged, round 1 of at most 25.',
      'Fitting the house as drawn to what was logged, round 2 of at most 25.',
    ]);
    const shares = work.map((it) => it?.done ?? Number.NaN);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.every((share) => share >= 0 && share < 1)).toBe(true);
    held[0].end();
    expect((await next())?.state).toEqual({ kind: 'assessed' });
    await leave();
  });

  test('ends when the house is deleted', async () => {
    const { next } = progress(await server.ask(`/api/houses/${id}/progress`));
    await next();
    await server.ask(`/api/houses/${id}`, { method: 'DELETE' });
    expect(await next()).toBeNull();
  });
});

describe('an assessment', () => {
  test('that is cancelled leaves the house cancelled, until it is asked for again', async () => {
    expect((await cancel()).state).toEqual({ kind: 'cancelled' });
    await begin(server.services);
    expect(await state()).toEqual({ kind: 'cancelled' });
    const response = await assess();
    expect([response.status, await response.json()]).toMatchObject([202, { state: { kind: 'assessing' } }]);
  });

  test('that was cancelled and asked for again is made at the next start, if the program was stopped before', async () => {
    await cancel();
    await assess();
    expect(held).toHaveLength(2);
    await server.services.close();
    const next = heldCalculation();
    const later = serverAtHand({ calculate: next.calculate }, server.folder);
    await begin(later.services);
    expect(next.held).toHaveLength(1);
    await later.end();
  });

  test('that is cancelled while an earlier result still holds leaves that result', async () => {
    held[0].end();
    await ended();
    await assess();
    expect((await cancel()).state).toEqual({ kind: 'assessed' });
  });

  test('that waits behind another can be cancelled too', async () => {
    const first = id;
    id = await server.bring({ ...houseFolder });
    expect(await state()).toEqual({
      kind: 'assessing',
      done: 0,
      what: 'Waiting until another house is assessed.',
    });
    expect(held).toHaveLength(1);
    expect((await cancel()).state).toEqual({ kind: 'cancelled' });
    id = first;
    expect((await state()).kind).toBe('assessing');
  });

  test('that is asked for twice runs once', async () => {
    await assess();
    await assess();
    expect(held).toHaveLength(1);
  });

  test('that breaks down says so without the inside, and the next one runs', async () => {
    held[0].breakDown();
    await until(() => server.told.length > 0);
    const broken = await state();
    expect(broken.kind).toBe('not assessed');
    expect(JSON.stringify(broken)).not.toMatch(/memory|\.ts/);
    await assess();
    held[1].end();
    await ended();
    expect(await state()).toEqual({ kind: 'assessed' });
  });

  test('is not made anew at the next start when nothing changed', async () => {
    held[0].end();
    await ended();
    await begin(server.services);
    expect(held).toHaveLength(1);
  });

  test('is made anew at the next start by another version of the program', async () => {
    held[0].end();
    await ended();
    const next = heldCalculation();
    const newer = serverAtHand({ software: 'newer', calculate: next.calculate }, server.folder);
    await begin(newer.services);
    expect(next.held).toHaveLength(1);
    await newer.end();
  });

  test('of a house that is deleted meanwhile stores nothing', async () => {
    await server.ask(`/api/houses/${id}`, { method: 'DELETE' });
    expect(server.db.prepare('SELECT count(*) FROM outcome').pluck().get()).toBe(0);
    expect(server.told).toEqual([]);
  });
});

describe('a house that cannot be assessed', () => {
  const rewriteInside =
    "UPDATE original SET content = ? WHERE sha256 IN (SELECT sha256 FROM file WHERE name = 'in.csv')";
  /** As after an update of the program that reads a file or house.json differently than when it was brought. */
  const change = async (sql: string, ...values: unknown[]) => {
    server.db.prepare(sql).run(...values);
    await assess();
    held.at(-1)?.end();
    await until(() => server.services.reading.house(id)?.outcome?.kind !== 'cancelled');
    return state();
  };
  const codes = (it: HouseState) =>
    it.kind === 'not assessed' ? it.problems.map(({ code }) => code) : it.kind;

  beforeEach(() => cancel());

  test('for want of an inside temperature says so, and what is the matter with the file', async () => {
    const after = codes(await change(rewriteInside, Buffer.from('no log at all')));
    expect(after[0]).toBe('no-inside-temperature');
    expect(after.length).toBeGreaterThan(1);
  });

  test('for want of an outdoor temperature says so', async () => {
    expect(codes(await change("DELETE FROM file WHERE name = 'logs/out.csv'"))).toEqual([
      'no-outdoor-temperature',
      'file-missing',
    ]);
  });

  test('because house.json is not understood any more says what is wrong in it', async () => {
    const json = Buffer.from(houseFolder['house.json'].replace('"loggers"', '"logers"'));
    expect(codes(await change('UPDATE version SET json = ?', json))).toContain('key-unknown');
  });

  test('has no result from before beside its reasons, and is assessed once it can be', async () => {
    await change(rewriteInside, Buffer.from('no log at all'));
    expect(await server.json(`/api/houses/${id}`)).toMatchObject({ assessment: null, answer: null });
    expect(await server.json(`/api/houses/${id}/nights`)).toEqual({ curves: [] });
    server.db.prepare(rewriteInside).run(Buffer.from(houseFolder['in.csv']));
    await assess();
    held.at(-1)?.end();
    await until(() => server.services.reading.house(id)?.outcome?.kind === 'assessed');
    expect(await state()).toEqual({ kind: 'assessed' });
  });
});
