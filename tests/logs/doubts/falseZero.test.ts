import { describe, expect, test } from 'vitest';
import { doubted, every, onlyReadings, range } from './series.ts';

describe('a temperature of exactly 0', () => {
  test('at the beginning of a record far above it is a sensor that starts up', () => {
    expect(doubted(every(10, 'temperature', [0, 17, 18, 18, 18, 18]))).toEqual({ 'false-zero': [0] });
    expect(doubted(every(10, 'temperature', [0, 0, 0, 17, 18, 18, 18]))).toEqual({
      'false-zero': [0, 1, 2],
    });
    // READ: the weather column of tests/real-logs/solar-house-2012, its first rows
    expect(doubted(every(15, 'temperature', [0, 6.8, 17, 18, 20, 20]))).toEqual({ 'false-zero': [0] });
  });

  test('of several sensors that start up together is doubted in each', () => {
    const room = every(10, 'temperature', [0, 17, 18, 18, 18, 18]);
    const other = every(10, 'temperature', [0, 15, 15, 15, 15, 15]);
    expect(doubted(room, other)).toEqual({ 'false-zero': [0] });
    expect(doubted(other, room)).toEqual({ 'false-zero': [0] });
  });

  test('is doubted beside an outdoor sensor that stays near 0', () => {
    const room = every(10, 'temperature', [0, 17, 18, 18, 18, 18]);
    const outside = every(10, 'temperature', [1.2, 1.1, 1.1, 1, 1, 1]);
    expect(doubted(room, outside)).toEqual({ 'false-zero': [0] });
  });

  test('is kept where another thermometer of the file came in from the cold with it', () => {
    const air = every(10, 'temperature', [0, 14, 17, 18, 18, 18]);
    const probe = every(10, 'temperature', [0.4, 12, 16, 17, 18, 18]);
    expect(doubted(air, probe)).toEqual({});
  });

  test('is doubted alone and in runs between readings of 15 °C, at the end, and after a gap', () => {
    expect(
      doubted(every(10, 'temperature', [15, 15.1, 0, 15, 15.1, 0, 0, 0, 15, 15.1, 15.2, 15.1, 0])),
    ).toEqual({
      'false-zero': [2, 5, 6, 7, 12],
    });
    const all = every(10, 'temperature', [15, 15, 15, ...Array(12).fill(15), 0, 15, 15.1, 15, 15]);
    const broken = onlyReadings(all, (i) => i < 3 || i >= 15);
    expect(doubted(broken)).toEqual({ 'false-zero': [3] });
  });

  test('is doubted where the file counts in °F or K', () => {
    expect(doubted(every(10, 'temperature', [20, 20, (0 - 32) / 1.8, 20, 20, 20]))).toEqual({
      'false-zero': [2],
    });
    // 0 K is doubted as what cannot be before it is looked at as a zero
    expect(doubted(every(10, 'temperature', [20, 20, 0 - 273.15, 20, 20, 20]))).toEqual({
      impossible: [2],
    });
  });

  test('is doubted in frost as well as in warmth', () => {
    expect(doubted(every(10, 'temperature', [-12, -12.1, 0, -12, -12.2, -12.1]))).toEqual({
      'false-zero': [2],
    });
  });

  test('is a reading where the weather passes through it', () => {
    const night = [3, 2.1, 1.2, 0.6, 0, -0.4, -0.9, 0, 0, 0, 1.1, 2.3, 3.6];
    expect(doubted(every(10, 'temperature', night))).toEqual({});
    expect(doubted(every(60, 'temperature', [4.2, 0, 3.9, 5, 2, 0, -3, -6, 0, 4]))).toEqual({});
    expect(doubted(every(10, 'temperature', [0, 0.5, 0]))).toEqual({});
  });

  test('is a reading where a logger falls through it into the cold', () => {
    expect(doubted(every(10, 'temperature', [20, 20, 19.9, 0, -18, -18.1, -18]))).toEqual({});
  });

  test('is a reading where daily values leap as far from day to day', () => {
    const daily = [8, 2, 9, 0, 7, 1, 6, 0, 5, 11, 3, 9];
    expect(doubted(every(1440, 'temperature', daily))).toEqual({});
  });

  test('is a reading in a bath of ice that the sensor is dipped into and warms up from', () => {
    expect(doubted(every(1, 'temperature', [20, 14, 6, 2, 0.4, 0, 0, 0, 0, 0.1, 6, 12, 16, 18]))).toEqual({});
  });
});

describe('a zero of another quantity', () => {
  test('is doubted where none exists: humidity, pressure, carbon dioxide', () => {
    expect(doubted(every(10, 'humidity', [0, 0, 0.45, 0.46, 0, 0.45]))).toEqual({ 'false-zero': [0, 1, 4] });
    expect(doubted(every(10, 'humidity', [0.45, ...Array(300).fill(0), 0.45]))).toEqual({
      'false-zero': range(1, 301),
    });
    expect(doubted(every(10, 'pressure', [0, 101_300, 101_310, 0, 101_320]))).toEqual({
      'false-zero': [0, 3],
    });
    expect(doubted(every(10, 'carbonDioxide', [0, 4e-4, 5e-4, 0, 4e-4]))).toEqual({ 'false-zero': [0, 3] });
  });

  test('is kept in air so dry that its neighbours are near it, and in a channel of nothing else', () => {
    expect(doubted(every(10, 'humidity', [0.03, 0.01, 0, 0, 0.02]))).toEqual({});
    expect(doubted(every(10, 'humidity', [0, 0, 0]))).toEqual({});
    expect(doubted(every(10, 'temperature', [0, 0, 0, 0, 0]))).toEqual({});
  });

  test('is a reading of calm, of night, of a heater that is off, of a meter that begins', () => {
    expect(doubted(every(10, 'windSpeed', [5, 0, 6, 0, 0, 4]))).toEqual({});
    expect(doubted(every(10, 'irradiance', [600, 0, 0, 650, 0, 700]))).toEqual({});
    expect(doubted(every(10, 'power', [0, 2000, 0, 2000, 0, 0]))).toEqual({});
    expect(doubted(every(10, 'energy', [0, 1e6, 0, 2e6, 0]))).toEqual({});
    expect(doubted(every(10, 'meter', [0, 0, 0, 3.6e6, 7.2e6]))).toEqual({});
  });
});
