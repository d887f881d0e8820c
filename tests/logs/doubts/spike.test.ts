import { describe, expect, test } from 'vitest';
import { livedInRoom, logged } from './life.ts';
import { doubted, every, onlyReadings, withValues } from './series.ts';

const { temperature, humidity } = logged(3, livedInRoom(3, 6), 10);
/** Half past two at night, when nothing happens. */
const at = 3 * 144 + 15;

describe('a spike', () => {
  test('of one to three readings is doubted, upwards and downwards', () => {
    for (const rise of [25, 7, -7, -25])
      for (const width of [1, 2, 3]) {
        const places = [at, at + 1, at + 2].slice(0, width);
        const changed = Object.fromEntries(places.map((i, k) => [i, temperature.value[i] + rise + k / 10]));
        expect(doubted(withValues(temperature, changed))).toEqual({ spike: places });
      }
  });

  test('of humidity is doubted from a quarter on', () => {
    for (const rise of [0.3, -0.3])
      expect(doubted(withValues(humidity, { [at]: humidity.value[at] + rise }))).toEqual({ spike: [at] });
  });

  test('beside another leaves the good reading between them', () => {
    const changed = { [at]: 60, [at + 2]: 61, [at + 4]: 59 };
    expect(doubted(withValues(temperature, changed))).toEqual({ spike: [at, at + 2, at + 4] });
  });

  test('is seen beside false zeros', () => {
    const changed = { [at]: 0, [at + 2]: 60, [at + 4]: 0 };
    expect(doubted(withValues(temperature, changed))).toEqual({
      'false-zero': [at, at + 4],
      spike: [at + 2],
    });
  });
});

describe('no spike', () => {
  test('is a step: a logger moved, a door left open', () => {
    const moved = { ...temperature, value: temperature.value.map((it, i) => (i < at ? it : it - 8)) };
    expect(doubted(moved)).toEqual({});
    // what lies between the two levels, or beyond one on the way, belongs to the step
    expect(doubted(withValues(moved, { [at]: moved.value[at] - 3 }))).toEqual({});
  });

  test('is four readings in a row', () => {
    const up = (i: number) => temperature.value[i] + 12;
    const changed = { [at]: up(at), [at + 1]: up(at + 1), [at + 2]: up(at + 2), [at + 3]: up(at + 3) };
    expect(doubted(withValues(temperature, changed))).toEqual({});
  });

  test('is a change of 5 K within an hour at hourly readings, nor of 10 K', () => {
    const hourly = logged(3, livedInRoom(3, 20), 60).temperature;
    for (const rise of [5, -5, 10])
      expect(doubted(withValues(hourly, { 200: hourly.value[199] + rise }))).toEqual({});
  });

  test('is a shower that dies away', () => {
    const shower = [0.35, 0.28, 0.21, 0.15, 0.1, 0.06, 0.03];
    const changed = Object.fromEntries(shower.map((rise, k) => [at + k, humidity.value[at] + rise]));
    expect(doubted(withValues(humidity, changed))).toEqual({});
  });

  test('is the first or the last reading, or one beside a gap: a neighbour is missing', () => {
    const last = temperature.value.length - 1;
    expect(doubted(withValues(temperature, { 0: 40, [last]: 40 }))).toEqual({});
    const beside = onlyReadings(withValues(temperature, { [at]: 40 }), (i) => i < at - 12 || i >= at);
    expect(doubted(beside)).toEqual({});
  });

  test('is a reading in a channel that always leaps', () => {
    const wild = temperature.value.map((it, i) => it + 6 * Math.sin(i * i));
    expect(doubted(every(10, 'temperature', wild))).toEqual({});
  });

  test('is a gust, a cloud, a kettle', () => {
    for (const [quantity, leap] of [
      ['windSpeed', 30],
      ['irradiance', 900],
      ['power', 900],
      ['energy', 900],
    ] as const)
      expect(doubted(every(10, quantity, [...Array(30).fill(3), leap, ...Array(30).fill(3.1)]))).toEqual({});
  });
});

describe('a running meter', () => {
  const kWh = 3.6e6;
  const running = every(
    15,
    'meter',
    Array.from({ length: 400 }, (_, i) => kWh * (5000 + 0.4 * i)),
  );

  test('that is far above or far below for up to three readings has them doubted', () => {
    expect(doubted(withValues(running, { 90: 0, 200: 9e5 * kWh, 300: 12 * kWh, 301: 12 * kWh }))).toEqual({
      spike: [90, 200, 300, 301],
    });
  });

  test('that begins again at 0, or is exchanged, or leaps once for good, is kept', () => {
    for (const change of [(v: number) => v - running.value[200], (v: number) => v / 10, (v: number) => v * 2])
      expect(doubted({ ...running, value: running.value.map((v, i) => (i < 200 ? v : change(v))) })).toEqual(
        {},
      );
  });

  test('that stands still, stops and goes on is kept', () => {
    const heating = running.value.map((_, i) => kWh * (i < 100 ? 10 : i < 200 ? 10 + (i - 100) : 110));
    expect(doubted(every(15, 'meter', heating))).toEqual({});
  });
});
