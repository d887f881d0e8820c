/** What a house tells of those who live in it: taken along without names, deleted whole, kept until a day. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import type { HouseDetail } from '../../server/api/shapes.ts';
import { houseFolder, inside, insideFrom, house as invented } from './inventedHouse.ts';
import { asJson, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

let server: ServerAtHand;
beforeAll(() => {
  server = serverAtHand();
  return () => server.end();
});

/** All that a person may have written, with a word of its own each. */
const telling = {
  ...invented,
  name: 'Rosewood, 7 Mill Lane',
  location: { latitude: 52.2053, longitude: -1.1187, timeZone: 'Europe/London' },
  floorAreaM2: 80,
  volumeM3: 200,
  loggers: [
    {
      file: 'anna.csv',
      continuedIn: ['anna again.csv'],
      place: 'inside',
      room: 'Annaroom',
      leaveOut: [{ from: '2027-01-10T12:00', to: '2027-01-10T13:00', why: 'Anna moved it' }],
    },
    { file: 'logs/garden.csv', place: 'outside', clockOffsetMin: 10 },
  ],
  nights: [{ date: '2027-01-11', used: false, why: 'party at the Millers' }],
  notes: [{ at: '2027-01-11T08:00', text: 'Miller on holiday' }],
  elements: [{ name: 'Annawall', areaM2: 100, uValue: 0.3 }],
  partitions: [
    {
      name: 'Annapartition',
      areaM2: 5,
      buildUp: { layers: [{ name: 'plasterboard', thicknessMm: 12, conductivityWmK: 0.25 }] },
    },
  ],
  thermalBridges: { junctions: [{ name: 'Annacorner', lengthM: 3, psiWmK: 0.1 }] },
  limits: {
    name: 'Millertable',
    dated: '2027-01-01',
    note: 'Tester: Miller',
    uValues: { wall: 0.3 },
  },
  stages: [{ name: 'Annastage', from: '2027-01-10', to: '2027-01-14', missing: ['Annawall'] }],
};
const NAMES = /anna|mill|rosewood|garden|holiday|party|in\.csv|52\.2053|1\.1187/i;
const folder = {
  'house.json': JSON.stringify(telling),
  'anna.csv': `Owner: Anna Miller\n${inside}`,
  'anna again.csv': `Owner: Anna Miller\n${insideFrom(420, 500)}`,
  'logs/garden.csv': `Owner: Anna Miller\n${houseFolder['logs/out.csv']}`,
};

const readingsOf = (id: string) =>
  server.services.reading.channels(id).map(({ number, place, first, last }) => ({
    place,
    readings: server.services.reading.readings(number, first, last),
  }));

describe('without names', () => {
  test('a house tells no name, note, reason or exact place, and brought again it is the same readings', async () => {
    const id = await server.bring(folder);
    expect(server.services.reading.house(id)?.name).toBe('Rosewood, 7 Mill Lane');
    const response = await server.ask(`/api/houses/${id}/nameless.zip`);
    expect(response.headers.get('content-disposition')).not.toMatch(NAMES);
    const files = unzipSync(new Uint8Array(await response.arrayBuffer()));
    expect(Object.keys(files)).toEqual(['house.json', 'logger 1.csv', 'logger 2.csv']);
    for (const [name, bytes] of Object.entries(files))
      expect([name, NAMES.exec(name + new TextDecoder().decode(bytes))]).toEqual([name, null]);
    const again = await server.bring(files);
    expect(readingsOf(again)).toEqual(readingsOf(id));
    const { house } = await server.json<HouseDetail>(`/api/houses/${again}`);
    expect(house).toMatchObject({
      location: { latitude: 52.2, longitude: -1.1 },
      floorAreaM2: 80,
      nights: [{ date: '2027-01-11', used: false }],
      stages: [{ name: 'Stage 1', missing: ['Element 1'] }],
    });
  });
});

describe('the readings without names', () => {
  /** Three days; the logger of two columns leaves one of them out now and then. */
  const rows = (cell: (i: number) => string) =>
    Array.from({ length: 432 }, (_, i) => {
      const time = new Date(Date.UTC(2027, 0, 10, 12) + i * 600_500).toISOString();
      return `${time.slice(0, 23)}Z,${cell(i)}`;
    });
  const two = [
    'Time,Temperature (°C),Humidity (%)',
    ...rows((i) => `${i % 5 === 0 ? '' : 20 + i / 700},${i % 7 === 0 ? '' : 50 + (i % 30) / 3}`),
  ].join('\n');
  const bring = () => server.bring({ ...houseFolder, 'in.csv': two });
  const pieces = async (id: string) => {
    const { body } = await server.ask(`/api/houses/${id}/nameless.zip`);
    if (body === null) throw new Error('no body');
    return body.getReader();
  };

  test('are rows in the order of time, with an empty cell where a column has no reading', async () => {
    const id = await bring();
    const response = await server.ask(`/api/houses/${id}/nameless.zip`);
    const files = unzipSync(new Uint8Array(await response.arrayBuffer()));
    const { reading } = server.services;
    const channels = reading.channels(id).filter(({ file }) => file === 'in.csv');
    const found = channels.map(({ number, first, last, quantity }) => {
      const scale = quantity === 'humidity' ? 100 : 1;
      const days = reading.readings(number, first, last);
      return new Map(
        days.flatMap(({ time, value }) => Array.from(time, (t, i) => [t, value[i] * scale] as const)),
      );
    });
    const times = [...new Set(found.flatMap((it) => [...it.keys()]))].sort((a, b) => a - b);
    expect(times.length).toBeGreaterThan(400);
    const cell = (value: number | undefined) => (value === undefined ? '' : Number(value.toPrecision(9)));
    const expected = times.map((t) => {
      const stamp = `${new Date(t * 1000).toISOString().slice(0, 19)}Z`;
      return [stamp, ...found.map((it) => cell(it.get(t)))].join(',');
    });
    expect(new TextDecoder().decode(files['logger 1.csv'])).toBe(
      ['Time,Temperature 1 (C),Humidity 2 (%)', ...expected, ''].join('\r\n'),
    );
  });

  test('let others come in between while they are packed', async () => {
    const reader = await pieces(await bring());
    const events: string[] = [];
    setImmediate(() => setImmediate(() => events.push('another was answered')));
    while (!(await reader.read()).done);
    events.push('packed');
    expect(events).toEqual(['another was answered', 'packed']);
  });

  test('break off when the house is changed meanwhile, rather than stand beside those of another version', async () => {
    const id = await bring();
    const reader = await pieces(id);
    await reader.read();
    await server.ask(`/api/houses/${id}/notes`, asJson('POST', { at: '2027-01-11T08:00', text: 'changed' }));
    const rest = async () => {
      while (!(await reader.read()).done);
    };
    await expect(rest()).rejects.toThrow('changed meanwhile');
  });
});

describe('deleted', () => {
  test('a house is gone with its readings, originals, results and links, in every byte of the database', async () => {
    const heading = 'UNMISTAKABLE (°C)';
    const answered = {
      ...invented,
      loggers: [{ ...invented.loggers[0], columns: { temperature: heading } }, invented.loggers[1]],
    };
    const id = await server.bring({
      ...houseFolder,
      'house.json': JSON.stringify(answered),
      'in.csv': `Owner: UNMISTAKABLE\n${inside.replace('Temperature (°C)', heading)}`,
    });
    expect(server.db.prepare('SELECT answers FROM layout').pluck().all().join()).toContain(heading);
    await server.ask(
      `/api/houses/${id}/links`,
      asJson('POST', { scope: 'see', whose: 'UNMISTAKABLE', days: 1 }),
    );
    expect(bytesHeld()).toContain('UNMISTAKABLE');
    await server.ask(`/api/houses/${id}`, { method: 'DELETE' });
    expect(server.services.reading.house(id)).toBeNull();
    expect(bytesHeld()).not.toContain('UNMISTAKABLE');
  });
});

/** Of the database and its log of changes. */
const bytesHeld = () =>
  ['stillwarm.sqlite', 'stillwarm.sqlite-wal']
    .map((name) => join(server.folder, name))
    .filter(existsSync)
    .map((path) => readFileSync(path, 'latin1'))
    .join('');

describe('until when it is kept', () => {
  test('is a date that is told with the house, is taken back, and deletes nothing by itself', async () => {
    const id = await server.bring(houseFolder);
    const agree = (until: unknown) => server.ask(`/api/houses/${id}/keep-until`, asJson('PUT', { until }));
    expect((await agree('2020-02-14')).status).toBe(200);
    expect((await server.json<HouseDetail>(`/api/houses/${id}`)).keepUntil).toBe('2020-02-14');
    for (const until of ['soon', '2027-02-30', 5, undefined]) expect((await agree(until)).status).toBe(400);
    await agree(null);
    expect((await server.json<HouseDetail>(`/api/houses/${id}`)).keepUntil).toBeUndefined();
  });
});
