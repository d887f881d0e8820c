import { describe, expect, test } from 'vitest';
import type { Series } from '../../../src/logs/doubts/index.ts';
import { livedInRoom, logged } from './life.ts';
import { doubted, every, onlyReadings, range } from './series.ts';

const HOUR = 6; // readings
const room = livedInRoom(5, 10);
const { temperature, humidity } = logged(5, room, 10);
const held = (series: Series, from: number, end: number): Series => ({
  ...series,
  value: series.value.map((it, i) => (i >= from && i < end ? series.value[from] : it)),
});
/** About 03:00 of the fifth day, where both channels have just moved: readings before that were no repeats. */
const from = temperature.value.findIndex(
  (it, i) =>
    i >= 4 * 24 * HOUR + 3 * HOUR &&
    it !== temperature.value[i - 1] &&
    humidity.value[i] !== humidity.value[i - 1],
);

describe('a sensor that repeats itself', () => {
  test('is doubted from the second reading of the run on', () => {
    const end = from + 30 * HOUR;
    expect(doubted(held(temperature, from, end), humidity)).toEqual({ stuck: range(from + 1, end) });
  });

  test('is doubted with its whole file', () => {
    const end = from + 40 * HOUR;
    const both = [held(temperature, from, end), held(humidity, from, end)] as const;
    expect(doubted(both[0], both[1])).toEqual({ stuck: range(from + 1, end) });
    expect(doubted(both[1], both[0])).toEqual({ stuck: range(from + 1, end) });
  });

  test('is doubted to the end of the record, of which it may be more than half', () => {
    const end = temperature.value.length;
    expect(doubted(held(temperature, from, end))).toEqual({ stuck: range(from + 1, end) });
  });

  test('is not doubted for a rest of a few hours', () => {
    expect(doubted(held(temperature, from, from + 5 * HOUR), humidity)).toEqual({});
  });

  test('is not doubted where fewer than three other days tell how it rests', () => {
    const short = onlyReadings(held(temperature, 0, 30 * HOUR), (i) => i < 96 * HOUR);
    expect(doubted(short)).toEqual({});
  });

  test('is not doubted across a gap, of which nobody knows', () => {
    const stays = held(temperature, from, from + 30 * HOUR);
    const gap = (i: number) => i <= from + HOUR || i >= from + 29 * HOUR;
    expect(doubted(onlyReadings(stays, gap))).toEqual({});
  });
});

describe('an honest rest', () => {
  test('of a logger that shows half or whole degrees is kept for a day', () => {
    for (const step of [0.5, 1]) {
      const coarse = { ...temperature, value: temperature.value.map((it) => Math.round(it / step) * step) };
      expect(doubted(held(coarse, from, from + 30 * HOUR), humidity)).toEqual({});
    }
  });

  test('of a cellar that moves by a tenth in half a day is kept', () => {
    const cellar = temperature.value.map((_, i) => Math.round(100 + 6 * Math.sin(i / 300)) / 10);
    expect(doubted(every(10, 'temperature', cellar), humidity)).toEqual({});
  });

  test('of outdoor air at saturation is kept for days', () => {
    const foggy = humidity.value.map((it, i) =>
      i >= from && i < from + 60 * HOUR ? 1 : Math.min(1.04, it + 0.3),
    );
    expect(doubted(every(10, 'humidity', foggy), temperature)).toEqual({});
  });

  test('at 0 °C under melting snow is kept', () => {
    const thawing = (at: number) =>
      temperature.value.map((it, i) => (i >= from && i < from + 30 * HOUR ? at : it - 17));
    expect(doubted(every(10, 'temperature', thawing(0)), humidity)).toEqual({});
    expect(doubted(every(10, 'temperature', thawing(0.7)), humidity).stuck).toHaveLength(30 * HOUR - 1);
  });

  test('of the night, the calm, a heater, a meter, the air pressure is kept', () => {
    for (const quantity of [
      'irradiance',
      'windSpeed',
      'power',
      'energy',
      'meter',
      'pressure',
      'carbonDioxide',
      'voltage',
    ] as const) {
      const rests = temperature.value.map((it, i) => (i >= from && i < from + 48 * HOUR ? 20 : it));
      expect(doubted({ ...temperature, quantity, value: rests }, humidity).stuck).toBeUndefined();
    }
  });
});
