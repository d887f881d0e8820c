/** What no air, weather or pipe at a house can be. */
import { describe, expect, test } from 'vitest';
import { livedInRoom, logged } from './life.ts';
import { doubted, every, range } from './series.ts';

const { temperature, humidity } = logged(5, livedInRoom(5, 10), 10);
const during = (from: number, end: number, fault: number) =>
  every(
    10,
    'temperature',
    temperature.value.map((it, i) => (i >= from && i < end ? fault : it)),
  );

describe('a reading of what cannot be is doubted', () => {
  test('once, for hours and for days, from its first reading on', () => {
    for (const fault of [-242.02, 327.6, 850, -127.5])
      for (const end of [301, 304, 340, 600])
        expect(doubted(during(300, end, fault), humidity)).toEqual({ impossible: range(300, end) });
  });

  test('beside another fault, which is told as before', () => {
    const both = during(300, 340, 850);
    both.value[100] = 85;
    expect(doubted(both, humidity)).toEqual({ 'power-on': [100], impossible: range(300, 340) });
  });

  test('of humidity, of wind', () => {
    expect(doubted(every(10, 'humidity', [0.5, -0.06, -0.06, 1.19, 0.5]))).toEqual({ impossible: [1, 2, 3] });
    expect(doubted(every(10, 'windSpeed', [3, -3, -3, -3, -3, 4]))).toEqual({ impossible: [1, 2, 3, 4] });
  });

  test('where nothing else is in the channel', () => {
    expect(doubted(every(10, 'temperature', [2150, 2149, 2148]))).toEqual({ impossible: [0, 1, 2] });
  });
});

describe('kept is', () => {
  test('the coldest night, water that nearly boils, fog, calm, the thermopile by night, a roof that feeds back', () => {
    expect(doubted(every(10, 'temperature', [-50, -50.1, -50.2]))).toEqual({});
    expect(doubted(every(10, 'temperature', [92, 95, 97]))).toEqual({});
    expect(doubted(every(10, 'humidity', [1, 1.02, 1.04]))).toEqual({});
    expect(doubted(every(10, 'windSpeed', [0, 0, -0.05]))).toEqual({});
    expect(doubted(every(10, 'irradiance', [-4, -5, -3]))).toEqual({});
    expect(doubted(every(10, 'power', [-3000, 200, 2000]))).toEqual({});
  });
});
