import { describe, expect, test } from 'vitest';
import { judgeNights, nightsOfStage } from '../../src/cooling/index.ts';
import { nightsOf, place, recordOf } from './nightsAtHand.ts';

const record = recordOf({ days: 4 });
const nights = judgeNights(record, nightsOf(record));
const stageOf = (from: string, to: string) => {
  const { nights: inside, crossing } = nightsOfStage(
    { name: 'A', from, to },
    nights,
    record.grid,
    place.timeZone,
  );
  return { dates: inside.map(({ night }) => night.date), crossing };
};

describe('a stage bounded by dates', () => {
  test('takes the evenings from its first date to the one before its last', () => {
    expect(stageOf('2027-01-10', '2027-01-12').dates).toEqual(['2027-01-10', '2027-01-11']);
  });

  test('two stages that meet share no night and lose none', () => {
    const all = [...stageOf('2027-01-01', '2027-01-12').dates, ...stageOf('2027-01-12', '2027-02-01').dates];
    expect(all).toEqual(nights.map(({ night }) => night.date));
  });
});

describe('a stage bounded by clock times', () => {
  test('does not take a night that its bound cuts, and says which', () => {
    expect(stageOf('2027-01-11T02:00', '2027-01-13T12:00')).toEqual({
      dates: ['2027-01-11', '2027-01-12'],
      crossing: ['2027-01-10'],
    });
  });

  test('neither side has the night that was cut', () => {
    expect(stageOf('2027-01-10T12:00', '2027-01-11T02:00')).toEqual({ dates: [], crossing: ['2027-01-10'] });
  });
});
