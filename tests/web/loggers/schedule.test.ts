import { describe, expect, test } from 'vitest';
import { sunTimes } from '../../../src/sky/sunTimes.ts';
import { type PlannedTest, scheduleOf } from '../../../web/loggers/schedule.ts';

const place = { latitude: 52.2, longitude: -1.5, timeZone: 'Europe/London' };
const planned = (test: PlannedTest['test'], more: Partial<PlannedTest> = {}): PlannedTest => ({
  test,
  moreNights: null,
  powerW: null,
  durationH: null,
  warmestC: null,
  ...more,
});
const stepsOf = (it: PlannedTest, date = '2027-01-20', at = place) => {
  const schedule = scheduleOf(it, date, at);
  if (schedule.kind !== 'hours') throw new Error(schedule.kind);
  return schedule;
};

describe('a heated night', () => {
  const clock = (at = 0) =>
    new Intl.DateTimeFormat('en-GB', { timeStyle: 'short', timeZone: place.timeZone }).format(at * 1000);
  const clocks = (it: PlannedTest, date?: string) =>
    Object.fromEntries(stepsOf(it, date).steps.map(({ step, at }) => [step, clock(at)]));

  test('is heated from the first half hour an hour after sunset, for as long as the test says', () => {
    // COMPUTED: the sun sets at 16:31 there on that day.
    const five = planned('heated-night', { durationH: 5, powerW: 3500 });
    expect(clocks(five)).toMatchObject({
      'heat-on': '18:00',
      'look-after': '18:30',
      'heat-off': '23:00',
    });
    const { heating } = stepsOf(five);
    const { sunrise } = sunTimes('2027-01-21', place);
    expect(heating).toMatchObject({ hours: 5, wanted: 5 });
    expect(clock((sunrise ?? 0) - (heating?.left ?? 0) * 3600)).toBe('23:00');
  });

  test('comes on earlier, not before sunset, rather than keep anybody up', () => {
    const times = clocks(planned('heated-night', { durationH: 6 }));
    expect([times['heat-on'], times['heat-off']]).toEqual(['17:00', '23:00']);
  });

  test('is heated for less than is wanted where the evening is too short', () => {
    // COMPUTED: the sun sets at 21:01 there on that day.
    const it = planned('heated-night', { durationH: 8 });
    expect(stepsOf(it, '2027-05-20').heating).toMatchObject({ hours: 1.5, wanted: 8 });
    expect(clocks(it, '2027-05-20')['heat-off']).toBe('23:00');
  });

  test('is told in the order of time', () => {
    const times = stepsOf(planned('heated-night', { durationH: 14 })).steps.map(({ at }) => at);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  });

  test('cannot be where the sun does not set', () => {
    const north = { latitude: 70, longitude: 25, timeZone: 'Europe/Oslo' };
    expect(scheduleOf(planned('heated-night'), '2027-06-20', north).kind).toBe('no night');
  });
});

test('a metered week is read at the same hour by the clock on eight days, also across the change of the clocks', () => {
  const { steps } = stepsOf(planned('metered-week'), '2027-03-25');
  const clock = new Intl.DateTimeFormat('en-GB', { timeStyle: 'short', timeZone: place.timeZone });
  expect(steps.map(({ at }) => clock.format(at * 1000))).toEqual(Array.from({ length: 8 }, () => '09:00'));
  expect([steps[0].step, steps[7].step]).toEqual(['week-begins', 'week-ends']);
});

test('what needs no hour is an errand', () => {
  expect(scheduleOf(planned('capacity-known'), '2027-01-20', place).kind).toBe('errand');
});
