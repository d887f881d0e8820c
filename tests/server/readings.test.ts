import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { ReadingsAnswer, ThinnedChannel } from '../../server/api/shapes.ts';
import { readHouseFolder } from '../../server/houseFolder.ts';
import { begin } from '../../server/services.ts';
import { packDay, unpackDay } from '../../server/store/dayBlob.ts';
import { type LogChannel, readLog } from '../../src/logs/index.ts';
import { house, houseFolder } from './inventedHouse.ts';
import { heldCalculation, type ServerAtHand, sampleFolder, serverAtHand, until } from './serverAtHand.ts';

const ask = (server: ServerAtHand, id: string, query = '') =>
  server.json<ReadingsAnswer>(`/api/houses/${id}/readings${query}`);
/** Where an interval has anything: its middle, least and greatest. */
const shown = ({ time }: ReadingsAnswer, { min, max }: ThinnedChannel) =>
  time.flatMap((t, i) => (min[i] === null ? [] : [[t, min[i], max[i]]]));

describe('a house of readings', () => {
  let server: ServerAtHand;
  beforeEach(() => {
    server = serverAtHand();
  });
  afterEach(() => server.end());

  const minute = fc.integer({ min: 0, max: 60 * 24 * 4 });
  const log = fc
    .uniqueArray(minute, { minLength: 2, maxLength: 60 })
    .chain((minutes) =>
      fc.tuple(
        fc.constant(minutes.toSorted((a, b) => a - b)),
        fc.array(fc.integer({ min: -2000, max: 4500 }), {
          minLength: minutes.length,
          maxLength: minutes.length,
        }),
      ),
    )
    .map(([minutes, hundredths]) => ({
      minutes,
      values: hundredths.map((it) => it / 100),
      text: [
        'Time,Temperature (°C)',
        ...minutes.map((at, i) => {
          const time = new Date(Date.UTC(2027, 0, 10) + at * 60_000).toISOString();
          return `${time.slice(0, 16)}Z,${(hundredths[i] / 100).toFixed(2)}`;
        }),
      ].join('\n'),
    }));

  const again = <T extends { file: string }>(logger: T) => ({ ...logger, file: `again/${logger.file}` });

  test('gives the same readings back, and the same bytes', async () => {
    await fc.assert(
      fc.asyncProperty(fc.record({ a: log, b: log }), async ({ a, b }) => {
        const more = { ...house, loggers: [...house.loggers, ...house.loggers.map(again)] };
        const folder = {
          'house.json': JSON.stringify(more),
          'in.csv': houseFolder['in.csv'],
          'logs/out.csv': houseFolder['logs/out.csv'],
          'again/in.csv': a.text,
          'again/logs/out.csv': b.text,
        };
        const id = await server.bring(folder);
        for (const [file, { minutes, values }] of [
          ['again/in.csv', a],
          ['again/logs/out.csv', b],
        ] as const) {
          // Full resolution: intervals of a second, each holding one reading at most.
          for (const [i, at] of minutes.entries()) {
            const t = Date.UTC(2027, 0, 10) / 1000 + at * 60;
            const answer = await ask(server, id, `?from=${t}&to=${t + 9}&points=10`);
            const channel = answer.channels.find((it) => it.file === file);
            expect([answer.step, answer.time[0]]).toEqual([1, t + 0.5]);
            expect([channel?.min[0], channel?.max[0]]).toEqual([values[i], values[i]]);
          }
        }
        const zip = await server.ask(`/api/houses/${id}/folder.zip`);
        const files = unzipSync(new Uint8Array(await zip.arrayBuffer()));
        for (const [name, content] of Object.entries(folder))
          expect(files[name]).toEqual(new TextEncoder().encode(content));
      }),
      { numRuns: 10 },
    );
  });

  test('a channel with a gap is null where it is longer than its usual step', async () => {
    const rows = (days: readonly number[]) =>
      days.flatMap((day) =>
        Array.from({ length: 24 }, (_, hour) => {
          const time = new Date(Date.UTC(2027, 0, day, hour)).toISOString().slice(0, 16);
          return `${time}Z,${10 + hour / 10}`;
        }),
      );
    const text = (days: readonly number[]) => ['Time,Temperature (°C)', ...rows(days)].join('\n');
    const id = await server.bring({
      ...houseFolder,
      'in.csv': text([1, 2, 5]),
      'logs/out.csv': text([1, 2, 3, 4, 5]),
    });
    const answer = await ask(server, id, '?points=4000');
    const [inside, outside] = answer.channels;
    expect(outside.min.every((it) => it !== null)).toBe(true);
    const open = answer.time.filter((_, i) => inside.min[i] === null);
    expect(open[0]).toBeGreaterThan(Date.UTC(2027, 0, 2, 23) / 1000);
    expect(open.at(-1)).toBeLessThan(Date.UTC(2027, 0, 5) / 1000);
    expect(open.length * answer.step).toBeGreaterThan(2 * 86_400);
  });

  describe('with readings that something speaks against', () => {
    /** Three days of minutes at 20 °C and a little, with a zero at each of these. */
    const text = (zeros: readonly number[]) => {
      const off = new Set(zeros);
      const rows = Array.from({ length: 3 * 1440 }, (_, i) => {
        const time = new Date(Date.UTC(2027, 0, 10) + i * 60_000).toISOString().slice(0, 16);
        return `${time}Z,${off.has(i) ? 0 : (20 + Math.sin(i / 60)).toFixed(2)}`;
      });
      return ['Time,Temperature (°C)', ...rows].join('\n');
    };
    const at = (minute: number) => Date.UTC(2027, 0, 10) / 1000 + minute * 60;
    const doubtedOf = async (zeros: readonly number[], query: (id: string) => string) => {
      const id = await server.bring({ ...houseFolder, 'in.csv': text(zeros) });
      const { channels } = await ask(server, id, query(id));
      return channels.map(({ doubted }) => doubted);
    };

    test('tells their instants, and nothing of a channel that has none', async () => {
      expect(await doubtedOf([100, 1500, 1501, 4000], () => '')).toEqual([
        { at: [100, 1500, 1501, 4000].map(at), more: false },
        undefined,
      ]);
    });

    test('tells those of the asked span alone, its ends included', async () => {
      const span = `?from=${at(100)}&to=${at(1500)}`;
      expect(await doubtedOf([99, 100, 1500, 1501], () => span)).toEqual([
        { at: [100, 1500].map(at), more: false },
        undefined,
      ]);
    });

    test('tells the first 500, and that there are more', async () => {
      const zeros = Array.from({ length: 501 }, (_, i) => 5 + 8 * i);
      const [all] = await doubtedOf(zeros, () => '');
      expect(all).toEqual({ at: zeros.slice(0, 500).map(at), more: true });
      expect((await doubtedOf(zeros.slice(1), () => ''))[0]).toMatchObject({ more: false });
    });
  });

  test('knows the stages and the nights before it was assessed', async () => {
    await server.end();
    server = serverAtHand({ calculate: heldCalculation().calculate });
    const stages = [{ name: 'First', from: '2027-01-10', to: '2027-01-12' }];
    const id = await server.bring({
      ...houseFolder,
      'house.json': JSON.stringify({ ...house, stages }),
    });
    const answer = await ask(server, id);
    expect(answer.stages).toEqual([
      { name: 'First', from: Date.UTC(2027, 0, 10) / 1000, to: Date.UTC(2027, 0, 12) / 1000 },
    ]);
    expect(answer.nights.map(({ date, used }) => [date, used])).toEqual([
      ['2027-01-10', false],
      ['2027-01-11', false],
      ['2027-01-12', false],
    ]);
  });

  test.each(['points=9', 'points=4001', 'points=10.5', 'points=', 'from=yesterday', 'from=5&to=4', 'till=5'])(
    'refuses the query %s with 400',
    async (query) => {
      const id = await server.bring(houseFolder);
      expect((await server.ask(`/api/houses/${id}/readings?${query}`)).status).toBe(400);
    },
  );
});

describe('the demonstration house', () => {
  let server: ServerAtHand;
  let id: string;
  const read = new Map<string, readonly LogChannel[]>();

  beforeAll(async () => {
    server = serverAtHand();
    await begin(server.services);
    await until(() => server.services.reading.demonstration() !== null);
    id = server.services.reading.demonstration() ?? '';
    await until(() => server.services.reading.house(id)?.outcome != null);
    const folder = await readHouseFolder(sampleFolder);
    if (folder.kind !== 'house') throw new Error(folder.kind);
    const entries = [...folder.house.loggers, ...(folder.house.weather ?? []), ...(folder.house.heat ?? [])];
    for (const [file, bytes] of folder.files) {
      const entry = entries.find((it) => it.file === file);
      const reading = readLog(file, bytes, {
        timeZone: entry?.timeZone ?? folder.house.location.timeZone,
        clockOffset: 0,
        columns: entry?.columns ?? {},
        expected: file === 'heater.csv' ? 'power' : undefined,
      });
      read.set(file, reading.kind === 'read' ? reading.channels : []);
    }
  });
  afterAll(() => server.end());

  test.each([
    ['whole, from the readings', '', 1000],
    ['whole, from the hourly summaries', '', 100],
    ['whole, from the daily summaries', '', 10],
    ['four days, from the readings', '?from=1800000000&to=1800345600', 1000],
    ['four days, from the hourly summaries', '?from=1800000000&to=1800345600', 50],
  ])('%s: each interval has its least and greatest reading', async (_, query, points) => {
    const answer = await ask(server, id, `${query}${query === '' ? '?' : '&'}points=${points}`);
    expect(answer.time.length).toBeLessThanOrEqual(points);
    expect(answer.channels.map(({ file }) => file)).toEqual(expect.arrayContaining([...read.keys()]));
    for (const thinned of answer.channels) {
      const channel = read
        .get(thinned.file)
        ?.find(({ column, quantity }) => column === thinned.column && quantity === thinned.quantity);
      const scale = thinned.quantity === 'humidity' ? 0.01 : 1;
      answer.time.forEach((middle, i) => {
        const from = middle - answer.step / 2;
        const own = Array.from(channel?.value ?? []).filter((__, k) => {
          const t = channel?.time[k] ?? Number.NaN;
          return t >= from && t < from + answer.step;
        });
        if (own.length === 0) return; // a gap, or between two readings
        expect(thinned.min[i]).toBe(Math.min(...own) / scale);
        expect(thinned.max[i]).toBe(Math.max(...own) / scale);
      });
      expect(shown(answer, thinned).length).toBeGreaterThan(0);
    }
  });

  test('shows which nights were used', async () => {
    const answer = await ask(server, id);
    expect(answer.nights.filter(({ used }) => used).length).toBeGreaterThan(2);
    expect(answer.stages.map(({ name }) => name)).toHaveLength(2);
    for (const { sunset, sunrise } of answer.nights) expect(sunrise).toBeGreaterThan(sunset);
  });
});

test('a day of readings comes back from its bytes as it was', () => {
  const day = 20_000;
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: 0, max: 86_399_999 }), { maxLength: 100 }),
      fc.infiniteStream(fc.double({ noNaN: true })),
      (offsets, values) => {
        const sorted = offsets.toSorted((a, b) => a - b);
        const time = Float64Array.from(sorted, (it) => (day * 86_400_000 + it) / 1000);
        const value = Float64Array.from(sorted, () => values.next().value);
        expect(unpackDay(packDay({ time, value }, day), day)).toEqual({ time, value });
      },
    ),
  );
});
