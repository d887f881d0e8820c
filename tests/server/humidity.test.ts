/** Humidity and the loggers' facts, as the server answers them. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { HumidityAnswer, HumidityProgress, LoggersAnswer } from '../../server/api/loggerShapes.ts';
import type { Refusal } from '../../server/api/shapes.ts';
import { absoluteHumidity, excessOver, moistSeries, vapourPressure } from '../../src/air/index.ts';
import { house, houseFolder } from './inventedHouse.ts';
import { heldCalculation, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

/** Every ten minutes for two days from noon. */
const moist = (temperature: number, humidity: (i: number) => number) =>
  [
    'Time,Temperature (°C),Humidity (%RH)',
    ...Array.from({ length: 288 }, (_, i) => {
      const time = new Date(Date.UTC(2027, 0, 10, 12) + i * 600_000)
        .toISOString()
        .slice(0, 16)
        .replace('T', ' ');
      return `${time},${(temperature + (i % 2) / 10).toFixed(1)},${humidity(i).toFixed(1)}`;
    }),
  ].join('\n');

let server: ServerAtHand;
beforeAll(() => {
  // Nothing here waits for an assessment.
  server = serverAtHand({ calculate: heldCalculation('assess').calculate });
});
afterAll(() => server.end());

const folder = (change: object = {}) => ({
  'house.json': JSON.stringify({ ...house, ...change }),
  'in.csv': moist(20, (i) => 50 + (i % 3)),
  'logs/out.csv': moist(2, (i) => 80 + (i % 3)),
});
const humidityOf = (id: string, query = '') =>
  server.json<HumidityAnswer>(`/api/houses/${id}/humidity${query}`);
const grams = (temperature: number, humidity: number) =>
  1000 * absoluteHumidity(temperature, vapourPressure(temperature, humidity));

test('each logger has its temperature, humidity, absolute humidity and dew point, and a room its excess', async () => {
  const id = await server.bring(folder());
  const answer = await humidityOf(id);
  expect(answer.channels.map(({ quantity, unit }) => `${quantity} ${unit}`)).toEqual([
    ...['temperature C', 'humidity %', 'absoluteHumidity g/m3', 'dewPoint C'],
    ...['temperature C', 'humidity %', 'absoluteHumidity g/m3', 'dewPoint C'],
  ]);
  expect([answer.outside, answer.excess.map(({ room }) => room)]).toEqual(['logs/out.csv', ['Hall']]);
  const [hall] = answer.loggers;
  // COMPUTED: means of the rows above, by the law of gases; within what half a per cent of humidity makes.
  expect(hall.mean.humidityPercent).toBeCloseTo(51, 0);
  expect(hall.mean.absoluteGM3).toBeCloseTo(grams(20.05, 0.51), 1);
  expect(hall.mean.excessGM3).toBeCloseTo(grams(20.05, 0.51) - grams(2.05, 0.81), 1);
  expect(hall.nights.map(({ date }) => date)).toEqual(['2027-01-10', '2027-01-11']);
});

test('the highest reading is not lost by thinning, and one that is out of place is left out', async () => {
  const shower = moist(20, (i) => (i === 200 ? 99 : 50 + 8 * Math.exp(-(((i - 30) / 6) ** 2))));
  const id = await server.bring({ ...folder(), 'in.csv': shower });
  const { channels } = await humidityOf(id, '?points=10');
  expect(Math.max(...channels[1].max.map((it) => it ?? 0))).toBeCloseTo(58, 9);
});

test('from hourly summaries and from the readings themselves comes the same least and greatest', async () => {
  const shower = moist(20, (i) => 50 + 20 * Math.exp(-(((i - 40) / 8) ** 2)));
  const id = await server.bring({ ...folder(), 'in.csv': shower });
  const extremes = ({ channels, excess }: HumidityAnswer) =>
    [...channels, ...excess].map(({ min, max }) => [
      Math.min(...min.map((it) => it ?? Number.POSITIVE_INFINITY)),
      Math.max(...max.map((it) => it ?? Number.NEGATIVE_INFINITY)),
    ]);
  const [hours, readings] = [await humidityOf(id, '?points=40'), await humidityOf(id, '?points=4000')];
  expect([hours.step % 3600, readings.step < 600]).toEqual([0, true]);
  expect(extremes(hours)).toEqual(extremes(readings));
});

test('what house.json leaves out or adds to a logger holds for its humidity too', async () => {
  const [hall, out] = house.loggers;
  const loggers = [
    { ...hall, temperatureOffsetK: 1, leaveOut: [{ from: '2027-01-10T00:00', to: '2027-01-11T12:00' }] },
    out,
  ];
  const id = await server.bring(folder({ loggers }));
  const [moved] = (await humidityOf(id)).loggers;
  expect(moved.mean.temperatureC).toBeCloseTo(21.05, 2);
  expect(moved.nights.map(({ date }) => date)).toEqual(['2027-01-11']);
});

describe('a record of three months', () => {
  const START = Date.UTC(2027, 0, 1) / 1000;
  const HOURS = 91 * 24;
  /** Every half hour. */
  const long = (temperature: number, humidity: number) =>
    [
      'Time,Temperature (°C),Humidity (%RH)',
      ...Array.from({ length: 2 * HOURS }, (_, i) => {
        const time = new Date((START + i * 1800) * 1000).toISOString().slice(0, 16);
        const wave = Math.sin(i / 24) + (i % 3) / 10;
        return `${time}Z,${(temperature + wave).toFixed(2)},${(humidity + 5 * wave).toFixed(1)}`;
      }),
    ].join('\n');
  /** What was worked out of a house is kept, and of another one like it: each has its name. */
  const bring = (name: string) =>
    server.bring({ ...folder({ name }), 'in.csv': long(20, 50), 'logs/out.csv': long(2, 80) });
  const follow = async (id: string) => {
    const leaving = new AbortController();
    const response = await server.ask(`/api/houses/${id}/humidity/progress`, { signal: leaving.signal });
    const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader();
    const next = async () => {
      const { value = '' } = (await reader?.read()) ?? {};
      return (JSON.parse(value.slice('data: '.length)) as HumidityProgress).work?.what ?? null;
    };
    return { next, end: () => leaving.abort() };
  };

  test('comes to what all of its readings in one piece come to', async () => {
    const id = await bring('Whole');
    const { reading } = server.services;
    const series = reading.channels(id).map(({ number, first, last }) => {
      const days = reading.readings(number, first, last);
      const all = (of: 'time' | 'value') => Float64Array.from(days.flatMap((it) => [...it[of]]));
      return { time: all('time'), value: all('value') };
    });
    const [inside, outside] = [0, 2].map((i) => moistSeries(series[i], series[i + 1], 3600));
    const excess = excessOver(inside, outside, 3600);
    const { loggers, channels, excess: over, step, time } = await humidityOf(id, '?points=100');
    const mean = (values: Float64Array) => values.reduce((sum, it) => sum + it, 0) / values.length;
    expect(loggers.map((it) => it.mean)).toEqual([
      {
        temperatureC: mean(inside.temperature),
        humidityPercent: mean(inside.relativeHumidity) * 100,
        absoluteGM3: mean(inside.absoluteHumidity) * 1000,
        dewPointC: mean(inside.dewPoint),
        excessGM3: mean(excess) * 1000,
      },
      {
        temperatureC: mean(outside.temperature),
        humidityPercent: mean(outside.relativeHumidity) * 100,
        absoluteGM3: mean(outside.absoluteHumidity) * 1000,
        dewPointC: mean(outside.dewPoint),
        excessGM3: null,
      },
    ]);
    const bounds = (values: Float64Array, scale: number) =>
      time.map((middle) => {
        const own = values.filter((_, i) => Math.abs(inside.time[i] - middle + 0.5) <= step / 2);
        const rounded = (value: number) => Math.round(value * scale * 1000) / 1000;
        return [rounded(Math.min(...own)), rounded(Math.max(...own))];
      });
    const shown = ({ min, max }: HumidityAnswer['channels'][number]) => min.map((it, i) => [it, max[i]]);
    expect(channels.map(shown)).toEqual(
      [inside, outside].flatMap((it) => [
        bounds(it.temperature, 1),
        bounds(it.relativeHumidity, 100),
        bounds(it.absoluteHumidity, 1000),
        bounds(it.dewPoint, 1),
      ]),
    );
    expect(over.map(shown)).toEqual([bounds(excess, 1000)]);
  });

  test('tells month by month how far it is worked out, and nothing once it is', async () => {
    const id = await bring('Followed');
    const { next, end } = await follow(id);
    expect(await next()).toBeNull();
    const answer = humidityOf(id);
    const told: (string | null)[] = [];
    while (told.at(-1) !== null) told.push(await next());
    end();
    expect([...new Set(told)]).toEqual([
      'Reading month 1 of 3.',
      'Reading month 2 of 3.',
      'Reading month 3 of 3.',
      null,
    ]);
    expect((await answer).loggers).toHaveLength(2);
  });

  test('is given up when the last who waits for it has left, and worked out for whoever stays', async () => {
    const id = await bring('Left');
    const ask = (signal: AbortSignal) => server.ask(`/api/houses/${id}/humidity`, { signal });
    const [one, other] = [new AbortController(), new AbortController()];
    const { next, end } = await follow(id);
    await next();
    const both = [ask(one.signal), ask(other.signal)];
    await next();
    one.abort();
    expect(await next()).toContain('month');
    other.abort();
    const told = [];
    while (told.at(-1) !== null) told.push(await next());
    expect(told).not.toContain('Reading month 3 of 3.');
    expect((await Promise.all(both)).map(({ status }) => status)).toEqual([499, 499]);
    const [left, stays] = [new AbortController(), new AbortController()];
    const again = [ask(left.signal), ask(stays.signal)];
    await next();
    left.abort();
    expect((await again[1]).status).toBe(200);
    end();
  });
});

test('a house without humidity is told so', async () => {
  const id = await server.bring(houseFolder);
  const response = await server.ask(`/api/houses/${id}/humidity`);
  expect(response.status).toBe(404);
  expect(((await response.json()) as Refusal).problems[0].code).toBe('no-humidity');
});

test('each logger is told with its interval, its steps, its gaps and its bounds', async () => {
  const rows = moist(20, () => 50).split('\n');
  const id = await server.bring({
    ...folder(),
    'in.csv': [...rows.slice(0, 101), ...rows.slice(131)].join('\n'),
  });
  const { channels, asked } = await server.json<LoggersAnswer>(`/api/houses/${id}/loggers`);
  const [hall] = channels;
  expect(hall).toMatchObject({
    file: 'in.csv',
    quantity: 'temperature',
    readings: 258,
    every: 600,
    first: Date.UTC(2027, 0, 10, 12) / 1000,
    last: Date.UTC(2027, 0, 12, 11, 50) / 1000,
    doubted: 0,
    gaps: { count: 1, longest: 31 * 600 },
  });
  expect(hall.resolution).toBeCloseTo(0.1, 9);
  expect(asked).toBeGreaterThan(0);
});
