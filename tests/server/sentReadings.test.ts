/** Readings sent by a script: as CSV or JSON, in the same place as what a person brings. */
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { AddedExport, HouseDetail, Refusal } from '../../server/api/shapes.ts';
import { house, houseFolder, insideFrom } from './inventedHouse.ts';
import { asJson, heldCalculation, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

let server: ServerAtHand;
let id: string;
beforeEach(async () => {
  server = serverAtHand({ calculate: heldCalculation().calculate }); // nothing is assessed here
  id = await server.bring(houseFolder);
});
afterEach(async () => {
  vi.useRealTimers();
  await server.end();
});

const csv = (body: string, file: string | null = 'in.csv', type = 'text/csv') =>
  server.ask(`/api/houses/${id}/readings${file === null ? '' : `?file=${encodeURIComponent(file)}`}`, {
    method: 'POST',
    headers: { 'Content-Type': type },
    body,
  });
const json = (body: unknown) => server.ask(`/api/houses/${id}/readings`, asJson('POST', body));
const answer = async (response: Response) => [response.status, (await response.json()) as AddedExport];
const refusal = async (response: Response) => [
  response.status,
  ((await response.json()) as Refusal).problems[0].code,
];
const imports = async () => (await server.json<HouseDetail>(`/api/houses/${id}`)).imports.length;
/** The last of the inside readings as they are stored, and how many there are. */
const inside = () => {
  const { reading } = server.services;
  const [{ number, first, last }] = reading.channels(id);
  const days = reading.readings(number, first, last);
  return { n: days.reduce((sum, { time }) => sum + time.length, 0), last, value: days.at(-1)?.value.at(-1) };
};

/** 2027-01-13T12:00Z and ten minutes later: the two that follow what was brought. */
const NEXT = Date.UTC(2027, 0, 13, 12) / 1000;
const two = {
  file: 'in.csv',
  columns: ['Temperature (°C)'],
  readings: [
    ['2027-01-13T12:00:00Z', 19.5],
    ['2027-01-13T13:10:00+01:00', 19.123456789012344],
  ],
};

describe('a log', () => {
  test('goes on where the logger left off, as one series and one import', async () => {
    expect(await answer(await csv(insideFrom(400, 500)))).toEqual([
      200,
      { file: 'in (2).csv', of: 'in.csv', newReadings: 68, conflicts: 0 },
    ]);
    expect([inside().n, await imports()]).toEqual([500, 2]);
  });

  test('sent again changes nothing, nor does part of it', async () => {
    await csv(insideFrom(400, 500));
    for (const again of [insideFrom(400, 500), insideFrom(450, 500)])
      expect((await answer(await csv(again)))[1]).toMatchObject({ file: null, of: 'in.csv', newReadings: 0 });
    expect([inside().n, await imports()]).toEqual([500, 2]);
  });

  test('that says otherwise of stored instants leaves them, and tells how many', async () => {
    const other = insideFrom(400, 434).replace(/(2027-01-13 11:[0-5]0),[\d.]+/g, '$1,1');
    expect((await answer(await csv(other)))[1]).toMatchObject({ newReadings: 2, conflicts: 6 });
    expect(inside().n).toBe(434);
  });

  test.each([
    [
      'of no logger of the house',
      'attic.csv',
      'Time,Temperature (°C)\n2029-01-01 10:00,3\n',
      422,
      'logger-not-known',
    ],
    ['that is none', 'in.csv', 'Dear diary', 422, expect.any(String)],
    ['without a word which logger it is of', null, insideFrom(0, 9), 400, 'file-not-named'],
    ['by a path that leads elsewhere', '../in.csv', insideFrom(0, 9), 400, 'path-refused'],
    ['by the name of house.json', 'house.json', '{}', 422, 'no-log'],
  ])('%s is refused, and nothing is stored', async (_, file, body, status, code) => {
    expect(await refusal(await csv(body, file))).toEqual([status, code]);
    expect([inside().n, await imports()]).toEqual([432, 1]);
  });

  test('of another content type, and onto a house that is not there, is refused', async () => {
    expect(await refusal(await csv('x', 'in.csv', 'text/plain'))).toEqual([415, 'wrong-content-type']);
    id = 'nowhere';
    expect(await refusal(await csv('x'))).toEqual([404, 'no-such-house']);
  });

  test('several at once are all added, one after the other', async () => {
    const sent = [insideFrom(432, 450), insideFrom(450, 470), insideFrom(470, 480)].map((it) => csv(it));
    for (const response of await Promise.all(sent)) expect(response.status).toBe(200);
    expect([inside().n, await imports()]).toEqual([480, 2]);
  });
});

describe('readings as JSON', () => {
  test('are stored to the last digit, at their instants whatever the offset; sent again they change nothing', async () => {
    expect(await answer(await json(two))).toEqual([
      200,
      { file: 'in (2).csv', of: 'in.csv', newReadings: 2, conflicts: 0 },
    ]);
    expect(inside()).toEqual({ n: 434, last: NEXT + 600, value: 19.123456789012344 });
    expect((await answer(await json(two)))[1]).toMatchObject({ file: null, newReadings: 0 });
    expect(await imports()).toBe(2);
  });

  test('may have seconds since 1970 for their instants, and null for what is missing', async () => {
    await json({
      ...two,
      readings: [
        [NEXT, null],
        [NEXT + 300, 18],
      ],
    });
    expect(inside()).toEqual({ n: 433, last: NEXT + 300, value: 18 });
  });

  test('go into a log with decimal commas as that logger writes them', async () => {
    const [first, out] = house.loggers;
    const comma = { ...house, loggers: [{ ...first, read: { decimal: ',' } }, out] };
    id = await server.bring({
      ...houseFolder,
      'house.json': JSON.stringify(comma),
      'in.csv': houseFolder['in.csv'].replaceAll(',', ';').replaceAll('.', ','),
    });
    expect((await answer(await json(two)))[1]).toMatchObject({ newReadings: 2 });
    expect(inside().value).toBe(19.123456789012344);
  });

  test('are those of the logger that is named, though another sent the same a moment before', async () => {
    for (const file of ['in.csv', 'logs/out.csv'])
      expect((await answer(await json({ ...two, file })))[1]).toMatchObject({ of: file, newReadings: 2 });
  });

  test.each([
    ['before the clock of the gateway was set', '1970-01-01T00:10:00Z'],
    ['years from all that is there', '2031-01-01T00:00:00Z'],
  ])('%s are refused', async (_, at) => {
    expect(await refusal(await json({ ...two, readings: [[at, 18]] }))).toEqual([422, 'readings-far-off']);
    expect([inside().n, await imports()]).toEqual([432, 1]);
  });

  test('stand at their true instants although the clock of the logger is slow', async () => {
    const [first, out] = house.loggers;
    const slow = { ...house, loggers: [{ ...first, clockOffsetMin: 20 }, out] };
    id = await server.bring({ ...houseFolder, 'house.json': JSON.stringify(slow) });
    const later = Date.UTC(2027, 0, 14) / 1000;
    await json({ ...two, readings: [[later, 18]] });
    expect(inside().last).toBe(later);
  });

  test.each([
    ['of no logger of the house', { ...two, file: 'attic.csv' }, 422, 'logger-not-known'],
    ['with a value too many', { ...two, readings: [[NEXT, 1, 2]] }, 400, 'request-not-understood'],
    ['at no instant', { ...two, readings: [['2027-01-13 12:00', 1]] }, 400, 'request-not-understood'],
    ['with a key that is not known', { ...two, unit: 'F' }, 400, 'request-not-understood'],
    ['with a line break in a column', { ...two, columns: ['a\nb'] }, 400, 'request-not-understood'],
  ])('%s are refused, and nothing is stored', async (_, body, status, code) => {
    expect(await refusal(await json(body))).toEqual([status, code]);
    expect([inside().n, await imports()]).toEqual([432, 1]);
  });
});

describe('readings posted bit by bit', () => {
  const onDay = (day: number) => vi.setSystemTime(Date.UTC(2027, 0, 13 + day, 12));
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['Date'] });
    onDay(0);
  });
  type Row = readonly [at: number, value: number];
  const post = async (file: string, ...rows: Row[]) => {
    const readings = rows.map(([i, value]) => [NEXT + i * 600, value]);
    const response = await json({ file, columns: ['Temperature (°C)'], readings });
    expect(response.status).toBe(200);
    return (await response.json()) as AddedExport;
  };
  const filesOf = async () =>
    (await server.json<HouseDetail>(`/api/houses/${id}`)).files.map((it) => it.file);
  const importsOf = async () =>
    (await server.json<HouseDetail>(`/api/houses/${id}`)).imports.map(({ files }) => files);
  const decoded = (bytes: Uint8Array | null) => new TextDecoder().decode(bytes ?? new Uint8Array());
  const text = (file: string) => decoded(server.services.reading.file(id, file));
  const undo = () => server.ask(`/api/houses/${id}/undo`, { method: 'POST' });
  const POSTED = ['in (2).csv', 'logs/out (2).csv'];

  test('of several loggers by turns are one import a day, with one file for each, in the order of time', async () => {
    await post('in.csv', [1, 19.1]);
    await post('logs/out.csv', [1, 5.1]);
    await post('in.csv', [0, 19], [1, 18]);
    expect(await post('logs/out.csv', [2, 5.2])).toMatchObject({ file: POSTED[1], of: 'logs/out.csv' });
    expect(await importsOf()).toEqual([Object.keys(houseFolder).slice(1), POSTED]);
    expect(text(POSTED[0])).toBe(
      '"Time","Temperature (°C)"\n2027-01-13T12:00:00.000Z,19\n2027-01-13T12:10:00.000Z,19.1\n2027-01-13T12:10:00.000Z,18\n',
    );
    expect(server.db.prepare('SELECT count(*) FROM original').pluck().get()).toBe(4);
  });

  test('are taken back a day at a time', async () => {
    await post('in.csv', [0, 19]);
    const first = text(POSTED[0]);
    onDay(1);
    await post('in.csv', [1, 19.1]);
    await post('in.csv', [2, 19.2]);
    expect([inside().n, await importsOf()]).toMatchObject([435, [{}, [POSTED[0]], [POSTED[0]]]]);
    await undo();
    expect([inside().n, text(POSTED[0])]).toEqual([433, first]);
    await undo();
    expect([inside().n, await imports()]).toEqual([432, 1]);
  });

  test('begin a file and an import of their own after a person has changed something, and with other columns', async () => {
    await post('in.csv', [0, 19]);
    const bringing = await server.begin(id);
    const now: object = JSON.parse(decoded(server.services.reading.json(id)));
    await bringing.put({ 'house.json': JSON.stringify({ ...now, floorAreaM2: 80 }) });
    expect((await bringing.keep()).status).toBe(201);
    expect((await post('in.csv', [1, 19.1])).file).toBe('in (3).csv');
    const other = { file: 'in.csv', columns: ['Humidity (%)'], readings: [[NEXT, 50]] };
    expect((await answer(await json(other)))[1]).toMatchObject({ file: 'in (4).csv', newReadings: 1 });
    expect([(await filesOf()).length, await imports()]).toEqual([5, 4]);
  });

  test('begin another file when the one before is large', async () => {
    await post('in.csv', ...Array.from({ length: 2500 }, (_, i): Row => [i, 19]));
    expect((await post('in.csv', [2500, 19])).file).toBe('in (3).csv');
    expect(await post('in.csv', [2501, 19.5])).toMatchObject({ file: 'in (3).csv', newReadings: 1 });
    expect([inside().n, await importsOf()]).toMatchObject([2934, [{}, ['in (2).csv', 'in (3).csv']]]);
  });

  test('that cannot be joined without a change of readings stay apart', async () => {
    // Enough of what says otherwise than in.csv, in one file, would be taken for another logger's.
    for (let k = 0; k < 4; k++)
      await post('in.csv', [-3 * k - 1, 1], [-3 * k - 2, 1], [-3 * k - 3, 1], [k, 19]);
    expect([inside().n, (await filesOf()).length]).toEqual([436, 4]);
  });

  test('give the readings that one import of all gives, whatever the order', async () => {
    const row = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 190, max: 196 }));
    const posting = fc.record({
      file: fc.constantFrom('in.csv', 'logs/out.csv'),
      rows: fc.array(row, { minLength: 1, maxLength: 4 }),
      nextDay: fc.boolean(),
    });
    const readings = () => {
      const { reading } = server.services;
      return reading.channels(id).map(({ number, ...channel }) => ({
        ...channel,
        days: reading.readings(number, channel.first, channel.last),
      }));
    };
    await fc.assert(
      fc.asyncProperty(fc.array(posting, { minLength: 3, maxLength: 8 }), async (postings) => {
        id = await server.bring(houseFolder);
        let day = 0;
        for (const { file, rows, nextDay } of postings) {
          if (nextDay) onDay(++day);
          await post(file, ...rows.map(([i, tenths]): Row => [i, tenths / 10]));
        }
        const posted = readings();
        id = await server.bring(houseFolder);
        const bringing = await server.begin(id);
        for (const file of ['in.csv', 'logs/out.csv']) {
          const rows = postings.flatMap((it) => (it.file === file ? it.rows : []));
          const lines = rows.map(
            ([i, tenths]) => `${new Date((NEXT + i * 600) * 1000).toISOString()},${tenths / 10}`,
          );
          if (rows.length > 0) await bringing.put({ [file]: ['Time,Temperature (°C)', ...lines].join('\n') });
        }
        expect((await bringing.keep()).status).toBe(201);
        expect(posted).toEqual(readings());
      }),
      { numRuns: 5 },
    );
  });
});
