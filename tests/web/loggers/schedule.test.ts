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
  test('is heated from an hour after sunset for as long as the test says', () => {
    const { steps, left } = stepsOf(planned('heated-night', { durationH: 6, powerW: 3500 }));
    const at = new Map(steps.map((it) => [it.step, it.at]));
    const { sunset } = sunTimes('2027-01-20', place);
    expect(at.get('heat-on')).toBe((sunset ?? 0) + 3600);
    expect((at.get('heat-off') ?? 0) - (at.get('heat-on') ?? 0)).toBe(6 * 3600);
    const { sunrise } = sunTimes('2027-01-21', place);
    expect(left).toBeCloseTo(((sunrise ?? 0) - (at.get('heat-off') ?? 0)) / 3600, 9);
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
