/** First guesses of where a logger hung. */
import { describe, expect, test } from 'vitest';
import type { Imported } from '../../../src/assessment.ts';
import { guessPlacements, roomIn } from '../../../web/bringing/guess.ts';
import { importedOf } from './importedOf.ts';

const placed = (file: Imported) => guessPlacements([file], [])[0];

describe('by the name of the file', () => {
  test.each([
    ['outside.csv', 'outside'],
    ['Aussen_Nord.csv', 'outside'],
    ['außen.csv', 'outside'],
    ['extérieur 2027.csv', 'outside'],
    ['roof-void.csv', 'void'],
    ['Dachboden.txt', 'void'],
    ['loft.csv.gz', 'void'],
    ['neighbour.csv', 'adjacent'],
    ['wall_surface.csv', 'surface'],
    ['weather.csv', 'weather'],
    ['living.csv', 'inside'],
    ['bathroom (upstairs).csv', 'inside'],
    ['12345678.csv', 'inside'],
  ] as const)('%s is placed %s', (file, place) => {
    expect(placed(importedOf(file, { Temperature: 'temperature' })).place).toBe(place);
  });

  test('the room is in it, without dates, counters and words that every log has', () => {
    expect(placed(importedOf('logs/2027-01_living-room_log.csv', { Temperature: 'temperature' })).room).toBe(
      'Living room',
    );
    expect(roomIn('12345678')).toBe('');
    expect(roomIn('export data 2027')).toBe('');
  });

  test('what the logger calls itself goes before it', () => {
    const file = importedOf('a1.csv', { Temperature: 'temperature' }, { logger: 'Outside, north wall' });
    expect(placed(file)).toMatchObject({ place: 'outside', guess: 'name' });
    expect(placed(importedOf('a2.csv', { T: 'temperature' }, { logger: 'Kitchen' })).room).toBe('Kitchen');
  });
});

describe('by what it holds', () => {
  test('wind or sun make a weather station', () => {
    const file = importedOf('site.csv', { T: 'temperature', v: 'windSpeed' });
    expect(placed(file)).toMatchObject({ place: 'weather', guess: 'columns' });
  });

  test.each(['power', 'energy', 'meter'] as const)('%s alone makes a heat meter', (kind) => {
    expect(placed(importedOf('x.csv', { Heater: kind }))).toMatchObject({ place: kind, guess: 'columns' });
  });

  test('a file with several thermometers is as many loggers, each with the humidity beside it', () => {
    const file = importedOf('all.csv', {
      'T kitchen': 'temperature',
      'RH kitchen': 'humidity',
      'T outside': 'temperature',
      'RH outside': 'humidity',
    });
    expect(guessPlacements([file], []).map(({ place, room, columns }) => ({ place, room, columns }))).toEqual(
      [
        { place: 'inside', room: 'Kitchen', columns: { temperature: 'T kitchen', humidity: 'RH kitchen' } },
        { place: 'outside', room: '', columns: { temperature: 'T outside', humidity: 'RH outside' } },
      ],
    );
  });

  test('a file that holds nothing that is known is left out', () => {
    expect(placed(importedOf('plan.txt', {})).place).toBe('left out');
  });
});

describe('by the values', () => {
  const log = (file: string, mean: number) => importedOf(file, { T: 'temperature' }, { mean });

  test('the one far colder than the others is outside', () => {
    const guessed = guessPlacements([log('a.csv', 17), log('b.csv', 4), log('c.csv', 18)], []);
    expect(guessed.map(({ place }) => place)).toEqual(['inside', 'outside', 'inside']);
    expect(guessed[1].guess).toBe('values');
  });

  test('none is when all are about as warm, or when one is outside by its name already', () => {
    const alike = guessPlacements([log('a.csv', 17), log('b.csv', 16)], []);
    expect(alike.map(({ place }) => place)).toEqual(['inside', 'inside']);
    const named = guessPlacements([log('a.csv', 17), log('b.csv', 4), log('outside.csv', 3)], []);
    expect(named.map(({ place }) => place)).toEqual(['inside', 'inside', 'outside']);
  });
});
