/** What is worked out anew after a change of a house, and what is not. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { HouseDetail, HouseSummary } from '../../server/api/shapes.ts';
import { runTask } from '../../server/jobs/tasks.ts';
import { begin } from '../../server/services.ts';
import { house, houseFolder, insideFrom } from './inventedHouse.ts';
import { asJson, heldCalculation, type ServerAtHand, serverAtHand, until } from './serverAtHand.ts';

let server: ServerAtHand;
let held: ReturnType<typeof heldCalculation>['held'];
let id: string;
const detail = () => server.json<HouseDetail>(`/api/houses/${id}`);
const numbers = () => server.services.reading.channels(id).map(({ number }) => number);
const note = () =>
  server.ask(`/api/houses/${id}/notes`, asJson('POST', { at: '2027-01-11T09:00', text: 'x' }));
const decide = (date: string) =>
  server.ask(`/api/houses/${id}/nights/${date}/decision`, asJson('PUT', { used: false }));
const undo = () => server.ask(`/api/houses/${id}/undo`, { method: 'POST' });
async function add(files: Readonly<Record<string, string>>) {
  const bringing = await server.begin(id);
  await bringing.put(files);
  expect((await bringing.keep()).status).toBe(201);
}
const rename = () => add({ 'house.json': JSON.stringify({ ...house, name: 'Renamed' }) });
async function assessed(begun: number) {
  await until(() => held.length === begun);
  held[begun - 1].end();
  await until(() => server.services.reading.house(id)?.outcome?.kind === 'assessed');
}

beforeEach(async () => {
  const calculation = heldCalculation();
  held = calculation.held;
  server = serverAtHand({ calculate: calculation.calculate });
  id = await server.bring(houseFolder);
});
afterEach(() => server.end());

describe('a change of words', () => {
  test('leaves readings and results as they are; the assessment bears the new name', async () => {
    await assessed(1);
    const [before, channels] = [await detail(), numbers()];
    await note();
    await rename();
    const after = await detail();
    expect(held).toHaveLength(1);
    expect(numbers()).toEqual(channels);
    expect(after.state).toEqual({ kind: 'assessed' });
    expect(after.assessment).toEqual({ ...before.assessment, house: 'Renamed' });
  });

  test('while the house is being assessed does not stop it', async () => {
    await rename();
    expect((await detail()).state.kind).toBe('assessing');
    await assessed(1);
    expect((await detail()).assessment?.house).toBe('Renamed');
  });

  test('changes nothing else of an assessment', () => {
    const assess = () => {
      const outcome = runTask(
        { kind: 'assess', database: `${server.folder}/stillwarm.sqlite`, id },
        () => {},
      );
      if (!('assessment' in outcome)) throw new Error('not assessed');
      return { ...JSON.parse(outcome.assessment), house: '' };
    };
    const before = assess();
    const words = {
      ...house,
      name: 'Other',
      notes: [{ at: '2027-01-11T02:00', text: 'hatch open, heater on' }],
      limits: { name: 'Of the town', dated: '2027-01-01', uValues: { wall: 0.1 } },
    };
    server.db.prepare('UPDATE version SET json = ?').run(Buffer.from(JSON.stringify(words)));
    expect(assess()).toEqual(before);
  });
});

describe('a decision by hand', () => {
  test('has the house assessed anew, and its readings left as they are', async () => {
    await assessed(1);
    const channels = numbers();
    await decide('2027-01-11');
    expect(held).toHaveLength(2);
    expect(numbers()).toEqual(channels);
  });

  test('that is undone finds the result of before at once', async () => {
    await assessed(1);
    const before = await detail();
    await decide('2027-01-11');
    await assessed(2);
    expect((await detail()).assessment).not.toEqual(before.assessment);
    await undo();
    expect(await detail()).toEqual(before);
    expect(held).toHaveLength(2);
  });

  test('that is undone while it is being worked out stops that', async () => {
    await assessed(1);
    const before = await detail();
    await decide('2027-01-11');
    await undo();
    expect(await detail()).toEqual(before);
    await decide('2027-01-11');
    expect(held).toHaveLength(3);
  });
});

test('files that are added and taken back: the result of before, and its nights, are found at once', async () => {
  await assessed(1);
  const [before, nights] = [await detail(), await server.json(`/api/houses/${id}/nights`)];
  await add({ 'in.csv': insideFrom(0, 600) });
  await assessed(2);
  await undo();
  expect(held).toHaveLength(2);
  expect(await detail()).toEqual(before);
  expect(await server.json(`/api/houses/${id}/nights`)).toEqual(nights);
});

test('of each house the latest twelve former results are kept, however often one goes back and on', async () => {
  const { writer, reading } = server.services;
  const as = (figures: string) => ({
    ...{ name: 'x', timeZone: 'UTC', json: new Uint8Array(), content: figures, figures },
    ...{ files: [], channels: null, layouts: [] },
  });
  const result = { kind: 'assessed', answer: '{}', assessment: '{}', nights: [] } as const;
  await writer.keepHouse('house', as('0'), false, 0);
  await writer.storeOutcome('house', '0', result);
  for (let i = 1; i <= 14; i++) {
    await writer.addVersion('house', String(i - 1), as(String(i)), 0);
    await writer.storeOutcome('house', String(i), result);
  }
  for (let i = 14; i > 2; i--) {
    await writer.undoVersion('house', String(i), as(String(i - 1)));
    await writer.takeUpResult('house', String(i - 1));
    expect(reading.house('house')?.outcome).toMatchObject({ kind: 'assessed', restsOn: String(i - 1) });
  }
  expect(reading.hasFormerResult('house', '1')).toBe(false);
});

test('houses are assessed so many at a time as was said, and the next begins when one has ended', async () => {
  await server.end();
  const calculation = heldCalculation();
  held = calculation.held;
  server = serverAtHand({ calculate: calculation.calculate, atOnce: 2 });
  const ids = [
    await server.bring(houseFolder),
    await server.bring(houseFolder),
    await server.bring(houseFolder),
  ];
  const states = async () =>
    (await server.json<{ houses: HouseSummary[] }>('/api/houses')).houses.map(({ state }) =>
      state.kind === 'assessing' ? state.what : state.kind,
    );
  expect(held).toHaveLength(2);
  expect((await states())[2]).toMatch(/^Waiting/);
  await server.ask(`/api/houses/${ids[0]}/assessment`, { method: 'DELETE' });
  expect(held).toHaveLength(3);
  expect((await states())[0]).toBe('cancelled');
  expect((await states())[1]).not.toMatch(/^Waiting/);
});

test('what was queued and at work when the program stopped is begun again at the next start', async () => {
  await server.bring(houseFolder);
  expect(held).toHaveLength(1);
  await server.services.close();
  const next = heldCalculation();
  const later = serverAtHand({ calculate: next.calculate, atOnce: 2 }, server.folder);
  await begin(later.services);
  expect(next.held).toHaveLength(2);
  await later.end();
});
