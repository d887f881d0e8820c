import { expect, test } from 'vitest';
import type { LoggerMoisture, MeanMoisture } from '../../../server/api/loggerShapes.ts';
import { loggerNames } from '../../../web/humidity/loggerNames.ts';
import { moistNights, roomsMean } from '../../../web/humidity/moistNights.ts';

const air = (absoluteGM3: number, excessGM3: number | null = null): MeanMoisture => ({
  temperatureC: 18,
  humidityPercent: 50,
  absoluteGM3,
  dewPointC: 7,
  excessGM3,
});
const logger = (
  file: string,
  place: LoggerMoisture['place'],
  mean: MeanMoisture,
  nights: LoggerMoisture['nights'] = [],
): LoggerMoisture => ({ file, room: null, place, mean, nights });

test('the rooms together are the mean of the loggers inside, whatever hangs elsewhere', () => {
  const loggers = [
    logger('a', 'inside', air(7, 1)),
    logger('b', 'inside', air(9, 3)),
    logger('c', 'void', air(100)),
  ];
  expect(roomsMean(loggers)).toMatchObject({ absoluteGM3: 8, excessGM3: 2, dewPointC: 7 });
  expect(roomsMean([logger('c', 'void', air(100))])).toBeNull();
});

test('a night is told where it is known outside and in a room', () => {
  const loggers = [
    logger('a', 'inside', air(7), [
      { date: '2027-01-10', ...air(7, 1) },
      { date: '2027-01-11', ...air(7, null) },
      { date: '2027-01-12', ...air(7, 2) },
    ]),
    logger('out', 'outside', air(5), [
      { date: '2027-01-10', ...air(5), temperatureC: 3 },
      { date: '2027-01-11', ...air(5), temperatureC: 4 },
    ]),
  ];
  expect(moistNights(loggers, 'out')).toEqual([{ excessGM3: 1, outsideC: 3 }]);
  expect(moistNights(loggers, null)).toEqual([]);
});

test('two loggers that would be called alike are told apart by their files', () => {
  const named = [
    { file: 'a.csv', room: 'Hall', place: 'inside' as const },
    { file: 'b.csv', room: null, place: 'void' as const },
    { file: 'c.csv', room: null, place: 'void' as const },
  ];
  expect(loggerNames(named)).toEqual(['Hall', 'Void (b.csv)', 'Void (c.csv)']);
});
