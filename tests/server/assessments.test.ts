import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { HouseSummary, Progress } from '../../server/api/shapes.ts';
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
  test('tells the state at once, then every change', async () => {
    const response = await server.ask(`/api/houses/${id}/progress`);
    expect(response.headers.get('content-type')).toMatch(/^text\/event-stream/);
    const { next, leave } = progress(response);
    expect((await next())?.state).toEqual({ kind: 'assessing', done: 0 });
    held[0].progress(0.5);
    expect((await next())?.state).toEqual({ kind: 'assessing', done: 0.5 });
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
    expect([response.status, await response.json()]).toEqual([
      202,
      { state: { kind: 'assessing', done: 0 } },
    ]);
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
    expect(await state()).toEqual({ kind: 'assessing', done: 0 });
    expect(held).toHaveLength(1);
    expect((await cancel()).state).toEqual({ kind: 'cancelled' });
    id = first;
    expect(await state()).toEqual({ kind: 'assessing', done: 0 });
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
