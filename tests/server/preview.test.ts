/** What the preview of a bringing says of each file, also where no house.json names it. */
import { gzipSync, strToU8, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { FilePreview } from '../../server/api/shapes.ts';
import { house, houseFolder, inside, outside } from './inventedHouse.ts';
import { type BringingAtHand, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

let server: ServerAtHand;
let bringing: BringingAtHand;
beforeEach(async () => {
  server = serverAtHand();
  bringing = await server.begin();
});
afterEach(() => server.end());
const file = async (name: string): Promise<FilePreview | undefined> =>
  (await bringing.preview()).files.find(({ imported }) => imported.file === name);
const rows = (...lines: readonly string[]) => lines.join('\n');

describe('logs without a house.json', () => {
  test('are read all the same, on the clock of UTC', async () => {
    await bringing.put({ 'in.csv': inside });
    const preview = await bringing.preview();
    expect(preview).toMatchObject({ house: null, onto: null, ready: false, missing: [], notes: [] });
    expect(preview.problems.map(({ code }) => code)).toEqual(['house-json-missing']);
    expect(preview.files).toMatchObject([
      {
        named: false,
        remembered: null,
        change: null,
        imported: { file: 'in.csv', rows: 432, from: '2027-01-10T12:00:00+00:00', intervalS: 600 },
      },
    ]);
    expect(preview.files[0].imported.understood?.columns.map(({ quantity }) => quantity)).toEqual([
      null,
      'temperature',
    ]);
  });

  test('tell each other the order of day and month', async () => {
    const day = (month: string) =>
      rows('Time,Temp C', `05/${month}/2027 10:00,20`, `06/${month}/2027 10:00,21`);
    await bringing.put({ 'a.csv': day('04') });
    expect((await file('a.csv'))?.imported.understood?.clock.orderBy).toBe('a guess');
    await bringing.put({ 'b.csv': rows('Time,Temp C', '15/04/2027 10:00,20', '16/04/2027 10:00,21') });
    expect((await file('a.csv'))?.imported.understood?.clock).toMatchObject({
      order: 'day-first',
      orderBy: 'the other files',
    });
  });

  test('are read on the clock of the house once there is one, whether it names them or not', async () => {
    const summer = rows('Time,Temp C', '2027-06-15 10:00,20', '2027-06-15 10:10,21');
    await bringing.put({ ...houseFolder, 'summer.csv': summer });
    expect(await file('summer.csv')).toMatchObject({
      named: false,
      imported: { from: '2027-06-15T10:00:00+01:00' },
    });
  });
});

test('the preview shows the house, and what only shows when all loggers are seen together', async () => {
  const two = rows('Time,Desk C,Shelf C', '2027-01-10 12:00,20,21', '2027-01-13 12:00,21,22');
  await bringing.put({ ...houseFolder, 'in.csv': two });
  const { house: shown, notes, files } = await bringing.preview();
  expect(shown).toEqual(house);
  expect(notes.map(({ code }) => code)).toContain('several-columns-first-taken');
  const told = files.flatMap(({ imported }) => imported.notes.map(({ code }) => code));
  expect(notes.filter(({ code }) => told.includes(code))).toEqual([]);
});

test('the bytes of an archive are kept as they are, and exported so', async () => {
  const [zip, gz] = [zipSync({ 'inside/log.csv': strToU8(inside) }), gzipSync(strToU8(outside))];
  const loggers = [
    { file: 'in.zip', place: 'inside' },
    { file: 'out.csv.gz', place: 'outside' },
  ];
  await bringing.put({
    'in.zip': zip,
    'out.csv.gz': gz,
    'house.json': JSON.stringify({ ...house, loggers }),
  });
  const preview = await bringing.preview();
  expect(preview.files.map(({ imported }) => imported.understood?.packed)).toEqual(['zip', 'gzip']);
  const { id } = (await (await bringing.keep()).json()) as { id: string };
  const { reading } = server.services;
  expect(Uint8Array.from(reading.file(id, 'in.zip') ?? [])).toEqual(zip);
  expect(Uint8Array.from(reading.file(id, 'out.csv.gz') ?? [])).toEqual(gz);
});

describe('how a layout was read', () => {
  const log = (header: string, day: number) =>
    rows(header, ...Array.from({ length: 24 }, (_, hour) => `2027-01-${day} ${hour}:00;${20 + hour / 10};5`));
  const answers = { columns: { temperature: 'Probe 2' }, timeZone: 'UTC' };
  const keep = async (given: object) => {
    const loggers = [
      { file: 'p.csv', place: 'inside', ...given },
      { file: 'logs/out.csv', place: 'outside' },
    ];
    await server.bring({
      'house.json': JSON.stringify({ ...house, loggers }),
      'p.csv': log('When;Probe 1;Probe 2', 10),
      'logs/out.csv': outside,
    });
  };

  test('is remembered for the next file like it, and offered', async () => {
    await keep(answers);
    await bringing.put({ 'other.csv': log('When;Probe 1;Probe 2', 20) });
    expect((await file('other.csv'))?.remembered).toEqual(answers);
  });

  test('is not offered to a file of other headers, or in another order', async () => {
    await keep(answers);
    await bringing.put({
      'order.csv': log('When;Probe 2;Probe 1', 20),
      'names.csv': log('When;Probe 1;Probe 3', 20),
    });
    expect((await file('order.csv'))?.remembered).toBeNull();
    expect((await file('names.csv'))?.remembered).toBeNull();
  });

  test('is not offered where the house has answers, but where it names the file without', async () => {
    await keep(answers);
    const offered = async (given: object) => {
      const loggers = [{ file: 'q.csv', place: 'inside', ...given }];
      await bringing.put({ 'house.json': JSON.stringify({ ...house, loggers }) });
      return (await file('q.csv'))?.remembered;
    };
    await bringing.put({ 'q.csv': log('When;Probe 1;Probe 2', 20) });
    expect(await offered({})).toEqual(answers);
    expect(await offered({ clockOffsetMin: 3 })).toBeNull();
  });

  test('is that of the last time, and not forgotten when a house leaves all open', async () => {
    await keep(answers);
    await keep({ columns: { temperature: 'Probe 1' } });
    await keep({});
    await bringing.put({ 'other.csv': log('When;Probe 1;Probe 2', 20) });
    expect((await file('other.csv'))?.remembered).toEqual({ columns: { temperature: 'Probe 1' } });
  });

  test('is what two loggers of one file have in common', async () => {
    const logger = (column: string) => ({
      file: 'p.csv',
      place: 'inside',
      columns: { temperature: column },
      read: { decimal: '.' },
    });
    const loggers = [logger('Probe 1'), logger('Probe 2'), { file: 'logs/out.csv', place: 'outside' }];
    await server.bring({
      'house.json': JSON.stringify({ ...house, loggers }),
      'p.csv': log('When;Probe 1;Probe 2', 10),
      'logs/out.csv': outside,
    });
    await bringing.put({ 'other.csv': log('When;Probe 1;Probe 2', 20) });
    expect((await file('other.csv'))?.remembered).toEqual({ read: { decimal: '.' } });
  });
});
