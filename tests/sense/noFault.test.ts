/** Houses in which every logger is in order. The seeds are not those that the thresholds were set on (1 to 25). */
import { describe, expect, test } from 'vitest';
import { senseOf } from '../../src/sense/index.ts';
import { type Circumstances, place, simulatedHouse } from './simulatedHouse.ts';

const seeds = (count: number) => Array.from({ length: count }, (_, i) => 201 + i);

function questions(seed: number, circumstances: Partial<Circumstances>) {
  const { loggers, weather } = simulatedHouse(seed, circumstances);
  return [...senseOf(loggers, weather, place), ...senseOf(loggers, null, place)];
}

describe('a house whose loggers are in order is asked nothing', () => {
  test.each(seeds(8))('in a heated winter (house %i)', (seed) => {
    expect(questions(seed, {})).toEqual([]);
  });

  test.each(seeds(2))('when the bedroom is heated at other hours than the rest (house %i)', (seed) => {
    expect(questions(seed, { zoned: true })).toEqual([]);
  });

  test.each(seeds(2))('in summer (house %i)', (seed) => {
    expect(questions(seed, { month: 5, heated: false })).toEqual([]);
  });

  test.each(seeds(2))('as an unheated shell in spring (house %i)', (seed) => {
    expect(questions(seed, { month: 3, heated: false })).toEqual([]);
  });

  test.each(seeds(2))('over the change to winter time (house %i)', (seed) => {
    expect(questions(seed, { month: 9, days: 30 })).toEqual([]);
  });
});

test('a house that stood cold for the first half day and was then heated is asked nothing (house 404)', () => {
  expect(questions(404, { days: 5 })).toEqual([]);
  expect(questions(404, { month: 3 })).toEqual([]);
});
