/** Humidity and the loggers' facts, as the server answers them. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { HumidityAnswer, LoggersAnswer } from '../../server/api/loggerShapes.ts';
import type { Refusal } from '../../server/api/shapes.ts';
import { absoluteHumidity, vapourPressure } from '../../src/air/index.ts';
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
