/** Files brought onto a house that is stored. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { FileChange, HouseDetail, ReadingsAnswer, Refusal } from '../../server/api/shapes.ts';
import { bedroom, house, houseFolder, inside, insideFrom } from './inventedHouse.ts';
import {
  type BringingAtHand,
  filePath,
  heldCalculation,
  raw,
  type ServerAtHand,
  serverAtHand,
  until,
} from './serverAtHand.ts';

let server: ServerAtHand;
let id: string;
let bringing: BringingAtHand;
const ROWS = 432;

beforeEach(async () => {
  server = serverAtHand();
  id = await server.bring(houseFolder);
  bringing = await server.begin(id);
});
afterEach(() => server.end());

const detail = () => server.json<HouseDetail>(`/api/houses/${id}`);
const readings = () => server.json<ReadingsAnswer>(`/api/houses/${id}/readings`);
const filesKept = async () => (await detail()).files.map(({ file }) => file);
async function change(name: string): Promise<FileChange | null | undefined> {
  return (await bringing.preview()).files.find(({ imported }) => imported.file === name)?.change;
}
const refusal = async (response: Response) => [
  response.status,
  ...((await response.json()) as Refusal).problems.map(({ code }) => code),
];
const none = { count: 0, first: [] };

describe('nothing has come', () => {
  test('the preview is of the house as it is stored, and names it', async () => {
    expect(await bringing.preview()).toMatchObject({
      onto: { id, name: 'Test house' },
      house,
      problems: [],
      files: [],
      missing: [],
      ready: true,
    });
  });

  test('keeping changes nothing', async () => {
    const before = await detail();
    const kept = await bringing.keep();
    expect([kept.status, await kept.json()]).toEqual([201, { id }]);
    expect(await detail()).toEqual(before);
  });

  test('a house that is not there cannot be added to', async () => {
    const response = await server.ask('/api/bringings', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ onto: 'nobody' }),
    });
    expect(await refusal(response)).toEqual([404, 'no-such-house']);
  });
});

describe('the same file again', () => {
  test.each(['in.csv', 'another name.csv'])('changes nothing, called %s', async (name) => {
    await bringing.put({ [name]: inside });
    const [file] = (await bringing.preview()).files;
    expect(file.change).toEqual({ kind: 'same', of: 'in.csv', newReadings: 0, conflicts: none });
    expect(file.named).toBe(false);
    const before = await detail();
    await bringing.keep();
    expect(await detail()).toEqual(before);
  });
});

describe('a longer export of a stored logger', () => {
  const longer = insideFrom(0, ROWS + 144);

  test('of the same name gets a free name, and the house is proposed with it', async () => {
    const taken = await server.ask(filePath(bringing.id, 'in.csv'), raw(longer));
    expect(await taken.json()).toEqual({
      name: 'in (2).csv',
      bytes: new TextEncoder().encode(longer).length,
    });
    const preview = await bringing.preview();
    expect(preview.files.map(({ imported, named }) => [imported.file, named])).toEqual([
      ['in (2).csv', true],
    ]);
    expect(preview.files[0].change).toEqual({
      kind: 'continues',
      of: 'in.csv',
      newReadings: 144,
      conflicts: none,
    });
    expect(preview.house?.loggers).toEqual([
      { ...house.loggers[0], continuedIn: ['in (2).csv'] },
      house.loggers[1],
    ]);
    expect(preview.ready).toBe(true);
  });

  test('is known by its readings, whatever it is called', async () => {
    await bringing.put({ 'export 7.csv': longer });
    expect(await change('export 7.csv')).toMatchObject({ kind: 'continues', of: 'in.csv', newReadings: 144 });
  });

  test('keeps what the person has written in house.json, and adds only its own name', async () => {
    await bringing.put({ 'in.csv': longer });
    await bringing.keep();
    const json = new TextDecoder().decode(server.services.reading.json(id) ?? undefined);
    const written = houseFolder['house.json'].replace(/^\uFEFF/, '').split('\r\n')[0];
    for (const line of written.split('\n').filter((it) => !it.includes('Hall'))) expect(json).toContain(line);
    expect(JSON.parse(json).loggers[0].continuedIn).toEqual(['in (2).csv']);
  });

  test('kept, adds what is new to the one series of the logger, and the house is assessed again', async () => {
    const first = await readings();
    await bringing.put({ 'in.csv': longer });
    await bringing.keep();
    await until(() => server.services.reading.house(id)?.outcome?.kind === 'assessed');
    const answer = await readings();
    expect(answer.channels.map(({ file }) => file)).toEqual(['in.csv', 'logs/out.csv']);
    expect(answer.last - first.last).toBe(144 * 600);
    const { assessment, files, imports } = await detail();
    expect(files.map(({ file }) => file)).toEqual(['in.csv', 'logs/out.csv', 'in (2).csv']);
    expect(assessment?.imports.map(({ file }) => file)).toContain('in (2).csv');
    expect(imports.map((it) => it.files)).toEqual([['in.csv', 'logs/out.csv'], ['in (2).csv']]);
    for (const { at } of imports) expect(at).toMatch(/^\d{4}-\d\d-\d\dT/);
  });

  test('sent again in the same bringing takes the place of the first', async () => {
    await bringing.put({ 'in.csv': insideFrom(0, ROWS + 10) });
    await bringing.put({ 'in.csv': longer });
    expect((await bringing.preview()).files).toHaveLength(1);
    expect((await change('in (2).csv'))?.newReadings).toBe(144);
  });

  test('a third export gets the next free name', async () => {
    await bringing.put({ 'in.csv': longer });
    await bringing.keep();
    bringing = await server.begin(id);
    await bringing.put({ 'in.csv': insideFrom(ROWS + 144, ROWS + 150) });
    expect(await change('in (3).csv')).toMatchObject({ kind: 'continues', of: 'in.csv', newReadings: 6 });
    expect((await bringing.preview()).house?.loggers[0].continuedIn).toEqual(['in (2).csv', 'in (3).csv']);
  });
});

describe('a later export without a common reading', () => {
  const later = insideFrom(ROWS + 20, ROWS + 40);

  test('is known by the name of the file', async () => {
    await bringing.put({ 'in.csv': later });
    expect(await change('in (2).csv')).toMatchObject({ kind: 'continues', of: 'in.csv', newReadings: 20 });
  });

  test('is known by the serial number above the header', async () => {
    const numbered = (text: string, serial: string) => `Serial number: ${serial}\n${text}`;
    const own = await server.bring({ ...houseFolder, 'in.csv': numbered(inside, 'A1') });
    bringing = await server.begin(own);
    await bringing.put({ 'a.csv': numbered(later, 'A1'), 'b.csv': numbered(later, 'B2') });
    expect(await change('a.csv')).toMatchObject({ kind: 'continues', of: 'in.csv' });
    expect(await change('b.csv')).toMatchObject({ kind: 'new', of: null });
  });

  test('with nothing to know it by is another logger', async () => {
    await bringing.put({ 'later.csv': later });
    expect(await change('later.csv')).toEqual({ kind: 'new', of: null, newReadings: 20, conflicts: none });
    expect((await bringing.preview()).house).toEqual(house);
  });
});

describe('another logger', () => {
  test('is new, also when its file has the name of a stored one', async () => {
    await bringing.put({ 'in.csv': bedroom });
    expect(await change('in (2).csv')).toEqual({
      kind: 'new',
      of: null,
      newReadings: ROWS,
      conflicts: none,
    });
  });

  test('that rests at the same value as a stored one is not taken for it', async () => {
    await bringing.put({ 'cellar.csv': houseFolder['logs/out.csv'].replace(/.*$/, '2027-01-13 11:50,5.10') });
    expect(await change('cellar.csv')).toMatchObject({ kind: 'new', newReadings: ROWS });
  });

  test('is stored once a house.json places it, beside what is there', async () => {
    const placed = {
      ...house,
      loggers: [...house.loggers, { file: 'bed.csv', place: 'inside', room: 'Bed' }],
    };
    await bringing.put({ 'bed.csv': bedroom });
    expect((await bringing.preview()).files[0].named).toBe(false);
    await bringing.put({ 'house.json': JSON.stringify(placed) });
    const preview = await bringing.preview();
    expect([preview.files[0].named, preview.files[0].change?.kind, preview.missing]).toEqual([
      true,
      'new',
      [],
    ]);
    await bringing.keep();
    expect((await filesKept()).toSorted()).toEqual(['bed.csv', 'in.csv', 'logs/out.csv']);
    expect((await readings()).channels.map(({ room }) => room)).toEqual(['Hall', null, 'Bed']);
  });
});

describe('values that differ for the same instant', () => {
  /** The second reading is one degree off, and the last ten are new. */
  const other = insideFrom(0, ROWS + 10).replace('2027-01-10 12:10,20.00', '2027-01-10 12:10,21.00');
  const swapped = {
    ...house,
    loggers: [{ ...house.loggers[0], file: 'in (2).csv', continuedIn: ['in.csv'] }, house.loggers[1]],
  };
  const inChannel = async () => {
    const span = `from=${Date.UTC(2027, 0, 10, 12, 10) / 1000}&to=${Date.UTC(2027, 0, 10, 12, 10, 9) / 1000}`;
    const answer = await server.json<ReadingsAnswer>(`/api/houses/${id}/readings?${span}&points=10`);
    return answer.channels[0].max[0];
  };

  test('are counted and shown', async () => {
    await bringing.put({ 'in.csv': other });
    expect((await change('in (2).csv'))?.conflicts).toEqual({
      count: 1,
      first: [{ at: '2027-01-10T12:10:00+00:00', column: 'Temperature (°C)', stored: 20, brought: 21 }],
    });
  });

  test('are shown five at most, and all counted', async () => {
    const off = insideFrom(0, ROWS).replace(/(12:[1-5]0|13:[0-5]0),20\.00/g, '$1,20.50');
    await bringing.put({ 'in.csv': off });
    const conflicts = (await change('in (2).csv'))?.conflicts;
    // Derivation: three days have twelve to fourteen o'clock; eleven of its twelve readings are changed each day.
    expect([conflicts?.count, conflicts?.first.length]).toEqual([33, 5]);
  });

  test('leave the stored ones as they are, unless the person has it otherwise', async () => {
    await bringing.put({ 'in.csv': other });
    await bringing.keep();
    expect(await inChannel()).toBe(20);
  });

  test('are those of the later export when a house.json names it first', async () => {
    await bringing.put({ 'in.csv': other, 'house.json': JSON.stringify(swapped) });
    const preview = await bringing.preview();
    expect(preview.house).toEqual(swapped);
    expect(preview.files[0].change).toMatchObject({ kind: 'continues', of: 'in.csv', newReadings: 10 });
    expect(preview.files[0].change?.conflicts.count).toBe(1);
    await bringing.keep();
    expect(await inChannel()).toBe(21);
  });
});

describe('a house.json that is sent', () => {
  test('without the logger that a file continues: the file is still shown', async () => {
    const [, out] = house.loggers;
    const without = { ...house, loggers: [{ file: 'bed.csv', place: 'inside' }, out] };
    await bringing.put({ 'house.json': JSON.stringify(without), 'bed.csv': bedroom });
    await bringing.put({ 'in.csv': insideFrom(0, 500) });
    expect((await bringing.preview()).files.map(({ imported, named }) => [imported.file, named])).toEqual([
      ['bed.csv', true],
      ['in (2).csv', false],
    ]);
  });

  test('goes before the proposal, and one with a mistake is not kept', async () => {
    await bringing.put({ 'in.csv': insideFrom(0, 500), 'house.json': JSON.stringify(house) });
    const preview = await bringing.preview();
    expect(preview.house).toEqual(house);
    expect([preview.files[0].named, preview.files[0].change?.kind]).toEqual([false, 'continues']);
    await bringing.put({ 'house.json': '{' });
    expect(await bringing.preview()).toMatchObject({ house: null, ready: false });
    expect(await refusal(await bringing.keep())).toEqual([409, 'json-broken']);
  });

  test('alone makes a version of its own', async () => {
    await bringing.put({ 'house.json': JSON.stringify({ ...house, name: 'Renamed' }) });
    await bringing.keep();
    const { name, imports, house: now } = await detail();
    expect([name, now.name, imports.map(({ files }) => files.length)]).toEqual([
      'Renamed',
      'Renamed',
      [2, 0],
    ]);
  });
});

test('a log of a clock that was never set is told before it stretches the record over decades', async () => {
  await bringing.put({ 'in.csv': 'Time,Temperature (°C)\n1970-01-01 00:10,18\n' });
  const { ready, problems } = await bringing.preview();
  expect([ready, problems.map(({ code }) => code)]).toEqual([false, ['readings-far-apart']]);
});

describe('a house that changes meanwhile', () => {
  test('is not overwritten: the bringing that began before is refused', async () => {
    const slow = await server.begin(id);
    await slow.put({ 'in.csv': insideFrom(0, 500) });
    await bringing.put({ 'in.csv': insideFrom(0, 600) });
    expect((await slow.preview()).ready).toBe(true);
    await bringing.keep();
    const before = await detail();
    expect(await refusal(await slow.keep())).toEqual([409, 'house-changed']);
    expect((await server.ask(`/api/bringings/${slow.id}`)).status).toBe(409);
    expect((await detail()).imports).toEqual(before.imports);
  });

  test('is refused by the store itself, when it changes between look and change', async () => {
    const { writer, reading } = server.services;
    const was = reading.house(id)?.content ?? '';
    await bringing.put({ 'house.json': JSON.stringify({ ...house, name: 'Renamed' }) });
    await bringing.keep();
    const empty = {
      name: '',
      timeZone: '',
      json: new Uint8Array(),
      content: '',
      figures: '',
      files: [],
      channels: [],
      layouts: [],
    };
    await expect(writer.addVersion(id, was, empty, 0)).rejects.toMatchObject({ code: 'HOUSE_CHANGED' });
  });

  test('is 404 when it was deleted', async () => {
    await bringing.put({ 'in.csv': insideFrom(0, 500) });
    await server.ask(`/api/houses/${id}`, { method: 'DELETE' });
    expect(readdirSync(join(server.folder, 'bringing'))).toEqual([]); // nothing of it stays on the disk
    expect(await refusal(await bringing.keep())).toEqual([404, 'no-such-bringing']);
  });
});

test('an assessment that goes on is that of the house as it was: it is stopped and begun anew', async () => {
  await server.end();
  const { held, calculate } = heldCalculation();
  server = serverAtHand({ calculate });
  id = await server.bring(houseFolder);
  await until(() => held.length === 1);
  bringing = await server.begin(id);
  await bringing.put({ 'in.csv': insideFrom(0, 500) });
  await bringing.keep();
  await until(() => held.length === 2);
  held[1].end();
  await until(() => server.services.reading.house(id)?.outcome?.kind === 'assessed');
  expect((await detail()).assessment?.imports.map(({ file }) => file)).toContain('in (2).csv');
});
