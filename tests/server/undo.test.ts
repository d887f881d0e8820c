/** Taking the latest import of a house back, and what becomes of the original files. */
import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { HouseDetail, HouseSummary, Refusal } from '../../server/api/shapes.ts';
import { bedroom, house, houseFolder, insideFrom } from './inventedHouse.ts';
import { heldCalculation, type ServerAtHand, serverAtHand, until } from './serverAtHand.ts';

let server: ServerAtHand;
let id: string;
beforeEach(async () => {
  server = serverAtHand();
  id = await server.bring(houseFolder);
});
afterEach(() => server.end());

const undo = (of = id) => server.ask(`/api/houses/${of}/undo`, { method: 'POST' });
const detail = (of = id) => server.json<HouseDetail>(`/api/houses/${of}`);
const assessed = (of = id) => until(() => server.services.reading.house(of)?.outcome?.kind === 'assessed');
const originals = () => server.db.prepare<[], number>('SELECT bytes FROM original').pluck().all();
async function add(files: Readonly<Record<string, string | Uint8Array>>, of = id) {
  const bringing = await server.begin(of);
  await bringing.put(files);
  expect((await bringing.keep()).status).toBe(201);
}
const folderOf = async (of = id) => {
  const zip = await server.ask(`/api/houses/${of}/folder.zip`);
  return unzipSync(new Uint8Array(await zip.arrayBuffer()));
};
/** Every stored reading of a house, as it is in the database. */
const readingsOf = (of = id) => {
  const { reading } = server.services;
  return reading.channels(of).map(({ number, ...channel }) => ({
    ...channel,
    days: reading.readings(number, channel.first, channel.last),
  }));
};

describe('undoing', () => {
  test('goes back to the house before: house.json, files, readings, assessment', async () => {
    await assessed();
    const [before, readings, folder] = [await detail(), readingsOf(), await folderOf()];
    await add({ 'in.csv': insideFrom(0, 600) });
    const response = await undo();
    expect(response.status).toBe(200);
    expect(((await response.json()) as HouseSummary).id).toBe(id);
    await assessed();
    expect(await detail()).toEqual(before);
    expect(readingsOf()).toEqual(readings);
    expect(await folderOf()).toEqual(folder);
  });

  test('takes one import after the other, the latest first', async () => {
    await add({ 'in.csv': insideFrom(0, 500) });
    await add({ 'in.csv': insideFrom(0, 600) });
    const names = async () => (await detail()).files.map(({ file }) => file);
    expect(await names()).toEqual(['in.csv', 'logs/out.csv', 'in (2).csv', 'in (3).csv']);
    await undo();
    expect(await names()).toEqual(['in.csv', 'logs/out.csv', 'in (2).csv']);
    await undo();
    expect(await names()).toEqual(['in.csv', 'logs/out.csv']);
  });

  test('of what was kept first is refused with 409, and what is there stays', async () => {
    const before = await detail();
    const response = await undo();
    expect([response.status, ((await response.json()) as Refusal).problems[0].code]).toEqual([
      409,
      'nothing-to-undo',
    ]);
    expect((await detail()).files).toEqual(before.files);
  });

  test('asked for twice at once takes one import back', async () => {
    await add({ 'in.csv': insideFrom(0, 500) });
    await add({ 'in.csv': insideFrom(0, 600) });
    const answers = await Promise.all([undo(), undo()]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 409]);
    expect((await detail()).imports).toHaveLength(2);
  });

  test('that breaks down leaves the house as it is', async () => {
    await server.end();
    const { held, calculate } = heldCalculation('version before');
    server = serverAtHand({ calculate });
    id = await server.bring(houseFolder);
    await add({ 'in.csv': insideFrom(0, 500) });
    const waiting = undo();
    await until(() => held.length === 1);
    held[0].breakDown();
    expect((await waiting).status).toBe(500);
    expect((await detail()).imports).toHaveLength(2);
  });
});

describe('an original file', () => {
  const sizes = (texts: readonly string[]) =>
    texts.map((it) => new TextEncoder().encode(it).length).toSorted();
  const { 'in.csv': inside, 'logs/out.csv': outside } = houseFolder;

  test('is stored once, however many houses and versions have it', async () => {
    const other = await server.bring(houseFolder);
    await add({ 'in.csv': insideFrom(0, 500) });
    await add({ 'in.csv': insideFrom(0, 500) }, other);
    expect(originals().toSorted()).toEqual(sizes([inside, outside, insideFrom(0, 500)]));
  });

  test('goes with the last house that has it, and with the import that brought it', async () => {
    const other = await server.bring(houseFolder);
    await add({ 'in.csv': insideFrom(0, 500) });
    await undo();
    expect(originals().toSorted()).toEqual(sizes([inside, outside]));
    await server.ask(`/api/houses/${id}`, { method: 'DELETE' });
    expect(originals().toSorted()).toEqual(sizes([inside, outside]));
    expect(Object.keys(await folderOf(other))).toEqual(Object.keys(houseFolder));
    await server.ask(`/api/houses/${other}`, { method: 'DELETE' });
    expect(originals()).toEqual([]);
  });

  test('that the newer house.json does not name any more is there again after undoing', async () => {
    const bed = { file: 'bed.csv', place: 'inside' };
    const [, out] = house.loggers;
    await add({ 'house.json': JSON.stringify({ ...house, loggers: [bed, out] }), 'bed.csv': bedroom });
    expect(Object.keys(await folderOf())).toEqual(['house.json', 'logs/out.csv', 'bed.csv']);
    await undo();
    expect((await folderOf())['in.csv']).toEqual(new TextEncoder().encode(inside));
  });
});

test('whatever is added and taken back: the same readings and the same folder as before', async () => {
  const step = fc.oneof(
    fc.tuple(fc.integer({ min: 0, max: 430 }), fc.integer({ min: 1, max: 300 })),
    fc.constant(null), // a file that is another logger, and a house.json that places it
  );
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 4 }), async (steps) => {
      const of = await server.bring(houseFolder);
      const seen: { readings: unknown; folder: unknown; names: unknown }[] = [];
      const look = async () => ({
        readings: readingsOf(of),
        folder: await folderOf(of),
        names: (await detail(of)).imports.map(({ files }) => files),
      });
      for (const [number, it] of steps.entries()) {
        const before = await look();
        if (it === null) {
          const now = (await detail(of)).house;
          const loggers = [...now.loggers, { file: `bed ${number}.csv`, place: 'inside' }];
          await add(
            { 'house.json': JSON.stringify({ ...now, loggers }), [`bed ${number}.csv`]: bedroom },
            of,
          );
        } else {
          await add({ 'in.csv': insideFrom(it[0], it[0] + it[1]) }, of);
        }
        const isNew = (await detail(of)).imports.length > before.names.length;
        if (isNew) seen.push(before);
      }
      for (const before of seen.toReversed()) {
        expect((await undo(of)).status).toBe(200);
        expect(await look()).toEqual(before);
      }
      expect((await undo(of)).status).toBe(409);
    }),
    { numRuns: 8 },
  );
});
