/** What a person decides by hand about a house: nights, notes, the bounds of stages. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { HouseDetail, NightsAnswer, ReadingsAnswer, Refusal } from '../../server/api/shapes.ts';
import { house, houseFolder } from './inventedHouse.ts';
import { asJson, type ServerAtHand, serverAtHand, until } from './serverAtHand.ts';

const stages = [{ name: 'Before / one', from: '2027-01-10', to: '2027-01-13T12:00' }];

let server: ServerAtHand;
let id: string;
beforeEach(async () => {
  server = serverAtHand();
  id = await server.bring({ ...houseFolder, 'house.json': JSON.stringify({ ...house, stages }, null, 2) });
  await assessed();
});
afterEach(() => server.end());

const assessed = () => until(() => server.services.reading.house(id)?.outcome?.kind === 'assessed');
const detail = () => server.json<HouseDetail>(`/api/houses/${id}`);
const send = (path: string, init: RequestInit) => server.ask(`/api/houses/${id}${path}`, init);
const decide = (date: string, used: boolean, why?: string) =>
  send(`/nights/${date}/decision`, asJson('PUT', { used, why }));
const codeOf = async (response: Response) => [
  response.status,
  ((await response.json()) as Refusal).problems[0].code,
];
async function nightOf(date: string) {
  await assessed();
  return (await detail()).assessment?.stages.flatMap(({ nights }) => nights).find((it) => it.date === date);
}

describe('a night', () => {
  test('left out by hand is not used any more, its reason is told, and the result says it is hand-picked', async () => {
    expect((await nightOf('2027-01-11'))?.used).toBe(true);
    expect((await decide('2027-01-11', false, 'a window stood open')).status).toBe(200);
    const night = await nightOf('2027-01-11');
    expect(night?.used).toBe(false);
    expect(night?.reasons.map(({ text }) => text).join()).toMatch(/left out by hand.*a window stood open/);
    const notes = (await detail()).assessment?.stages[0].notes ?? [];
    expect(notes.map(({ code }) => code)).toContain('hand-picked');
  });

  test('is left to the rules again, and house.json is what it was', async () => {
    const before = server.services.reading.json(id);
    await decide('2027-01-11', false, 'a window stood open');
    expect((await detail()).house.nights).toEqual([
      { date: '2027-01-11', used: false, why: 'a window stood open' },
    ]);
    expect((await send('/nights/2027-01-11/decision', { method: 'DELETE' })).status).toBe(200);
    expect((await nightOf('2027-01-11'))?.used).toBe(true);
    expect(server.services.reading.json(id)).toEqual(before);
  });

  test('has one decision, the last, and the decisions stand in the order of their dates', async () => {
    await decide('2027-01-12', false);
    await decide('2027-01-10', false);
    await decide('2027-01-12', true);
    expect((await detail()).house.nights).toEqual([
      { date: '2027-01-10', used: false },
      { date: '2027-01-12', used: true },
    ]);
  });

  test('of no date is refused, and so is taking back what was not decided', async () => {
    expect((await decide('yesterday', false)).status).toBe(409);
    expect(await codeOf(await send('/nights/2027-01-11/decision', { method: 'DELETE' }))).toEqual([
      404,
      'night-not-decided',
    ]);
    expect((await detail()).house.nights).toBeUndefined();
  });

  test('of a house that is not there is refused', async () => {
    const response = await server.ask(
      '/api/houses/none/nights/2027-01-11/decision',
      asJson('PUT', { used: true }),
    );
    expect(await codeOf(response)).toEqual([404, 'no-such-house']);
  });

  test('is a change like any other: undo takes it back', async () => {
    await decide('2027-01-11', false);
    expect((await server.ask(`/api/houses/${id}/undo`, { method: 'POST' })).status).toBe(200);
    expect((await detail()).house.nights).toBeUndefined();
  });
});

describe('a note', () => {
  test('is added in the order of time, told with its instant, and removed', async () => {
    await send('/notes', asJson('POST', { at: '2027-01-12T08:30', text: 'Loft hatch shut' }));
    await send('/notes', asJson('POST', { at: '2027-01-11T21:00', text: ' Loft hatch open ' }));
    const readings = await server.json<ReadingsAnswer>(`/api/houses/${id}/readings`);
    expect(readings.notes).toEqual([
      { at: Date.UTC(2027, 0, 11, 21) / 1000, local: '2027-01-11T21:00', text: 'Loft hatch open' },
      { at: Date.UTC(2027, 0, 12, 8, 30) / 1000, local: '2027-01-12T08:30', text: 'Loft hatch shut' },
    ]);
    await send('/notes', asJson('DELETE', { at: '2027-01-11T21:00', text: 'Loft hatch open' }));
    expect((await detail()).house.notes).toEqual([{ at: '2027-01-12T08:30', text: 'Loft hatch shut' }]);
  });

  test('at no time, without words, or removed twice is refused', async () => {
    expect((await send('/notes', asJson('POST', { at: 'noon', text: 'x' }))).status).toBe(409);
    expect((await send('/notes', asJson('POST', { at: '2027-01-11', text: ' ' }))).status).toBe(400);
    expect(await codeOf(await send('/notes', asJson('DELETE', { at: '2027-01-11', text: 'x' })))).toEqual([
      404,
      'no-such-note',
    ]);
  });
});

describe('a stage', () => {
  const move = (name: string, from: string, to: string) =>
    send('/stages', asJson('PUT', { stages: [{ name, from, to }] }));

  test('is moved, whatever its name, and nothing else of it changes', async () => {
    expect((await move('Before / one', '2027-01-11T06:00', '2027-01-13T12:00')).status).toBe(200);
    expect((await detail()).house.stages).toEqual([{ ...stages[0], from: '2027-01-11T06:00' }]);
    expect(await nightOf('2027-01-10')).toBeUndefined();
  });

  test('that ends before it begins, or is not there, is refused', async () => {
    expect((await move('Before / one', '2027-01-13', '2027-01-11')).status).toBe(409);
    expect(await codeOf(await move('Never', '2027-01-11', '2027-01-13'))).toEqual([404, 'no-such-stage']);
    expect((await detail()).house.stages).toEqual(stages);
  });

  const text = () => new TextDecoder().decode(server.services.reading.json(id) ?? undefined);
  const after = { name: 'After', from: '2027-01-12T12:00', to: '2027-01-13T12:00', complete: false };

  test('is added in the order of time and removed again, and all else stays as it was written', async () => {
    const before = text();
    expect((await send('/stages', asJson('POST', after))).status).toBe(200);
    expect((await detail()).house.stages).toEqual([...stages, after]);
    expect(text()).toContain(before.slice(0, before.indexOf('"stages"')));
    expect((await send('/stages', asJson('DELETE', { name: 'After' }))).status).toBe(200);
    expect(text()).toBe(before);
  });

  test('that is the last is removed with its key, and can be undone', async () => {
    const before = text();
    await send('/stages', asJson('DELETE', { name: 'Before / one' }));
    expect((await detail()).house.stages).toBeUndefined();
    await server.ask(`/api/houses/${id}/undo`, { method: 'POST' });
    expect(text()).toBe(before);
  });

  test('of a name that is taken, of an unknown key or that is not there is refused, and nothing is kept', async () => {
    expect((await send('/stages', asJson('POST', { ...after, name: 'Before / one' }))).status).toBe(409);
    expect((await send('/stages', asJson('POST', { ...after, colour: 'red' }))).status).toBe(409);
    expect(await codeOf(await send('/stages', asJson('DELETE', { name: 'Never' })))).toEqual([
      404,
      'no-such-stage',
    ]);
    expect((await detail()).house.stages).toEqual(stages);
  });
});

test('the wind of a night is the mean over its fitted hours', async () => {
  const rows = Array.from({ length: 72 }, (_, hour) => {
    const time = new Date(Date.UTC(2027, 0, 10, 12 + hour)).toISOString().slice(0, 16);
    return `${time}Z,${hour}`;
  });
  const weather = [{ file: 'weather.csv' }];
  id = await server.bring({
    ...houseFolder,
    'house.json': JSON.stringify({ ...house, weather }),
    'weather.csv': ['Time,Wind speed (m/s)', ...rows].join('\n'),
  });
  await assessed();
  const { curves, wind = [] } = await server.json<NightsAnswer>(`/api/houses/${id}/nights`);
  expect(wind.map(({ date }) => date)).toEqual(curves.map(({ date }) => date));
  const [first] = curves;
  const start = Date.UTC(2027, 0, 10, 12) / 1000;
  const whole = rows.flatMap((_, hour) => {
    const at = start + hour * 3600;
    return first.window !== null && at >= first.window.from && at < first.window.to ? [hour] : [];
  });
  expect(whole.length).toBeGreaterThan(3);
  // COMPUTED: the wind grows by 1 m/s an hour, so its mean is that of the hours counted
  expect(wind[0].meanMS).toBeCloseTo(whole.reduce((sum, it) => sum + it, 0) / whole.length, 9);
});
