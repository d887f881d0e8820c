/** 85 °C: what a digital thermometer holds before its first conversion. PRACTICE: the common one-wire sensor's reset value. */
import { expect, test } from 'vitest';
import { doubted, every } from './series.ts';

test('85 °C among readings of a room is doubted, once or repeated, wherever it stands', () => {
  expect(doubted(every(1, 'temperature', [85, 85, 21, 20, 85, 19, 85]))).toEqual({
    'power-on': [0, 1, 4, 6],
  });
});

test('185 °F and 358.15 K are the same, after their conversion', () => {
  for (const value of [((185 - 32) * 5) / 9, (185 - 32) / 1.8, 358.15 - 273.15])
    expect(doubted(every(10, 'temperature', [value, 21, 20, 21]))).toEqual({ 'power-on': [0] });
});

test('a heater that rises through 85 °C is kept', () => {
  expect(doubted(every(10, 'temperature', [60, 72, 85, 91, 85, 58]))).toEqual({});
  expect(doubted(every(10, 'temperature', [60, 85, 58]))).toEqual({});
});

test('84.9 °C is no such value, and 85 % humidity and 85 W are readings', () => {
  expect(doubted(every(10, 'temperature', [84.9, 21, 20, 21]))).toEqual({});
  for (const quantity of ['power', 'irradiance', 'windSpeed'] as const)
    expect(doubted(every(10, quantity, [85, 21, 20, 21]))).toEqual({});
});

test('a channel of nothing but 85 °C has nothing to be judged by', () => {
  expect(doubted(every(10, 'temperature', [85, 85, 85]))).toEqual({});
});
