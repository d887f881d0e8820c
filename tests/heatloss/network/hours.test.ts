/** Which heated nights the network is held against. */
import { describe, expect, test } from 'vitest';
import { hoursOf } from '../../../src/heatloss/network/hours.ts';
import { timeAt } from '../../../src/series/grid.ts';
import { firstNight, heatedHouse, onBetween } from '../heatedHouse.ts';

const record = heatedHouse({ power: onBetween(17, 23, 4500) });
const [night] = firstNight(record);
const stage = {
  name: 'All',
  from: record.grid.start,
  to: timeAt(record.grid, record.grid.length - 1),
  complete: true,
  missing: [],
  nights: [
    {
      night,
      window: null,
      fit: null,
      drop: null,
      meanDifference: null,
      drivingDifference: null,
      duration: null,
      heated: true,
      used: false,
      reasons: [],
    },
  ],
  crossing: [],
};
const heatedWith = (edit: (watts: number, hours: number) => number) => {
  const heatingPower = record.heatingPower?.map((it, k) => edit(it, 12 + k / 6)) ?? null;
  return hoursOf({ ...record, heatingPower }, [stage], 120).heatedDates;
};

describe('a heated night', () => {
  test('counts where its heat was logged until sunrise', () => {
    expect(heatedWith((it) => it)).toEqual([night.date]);
  });

  test('does not count where the log breaks off while the heater is on, or after it', () => {
    const brokenOff = (from: number) =>
      heatedWith((it, hours) => (hours >= from && hours < 32 ? Number.NaN : it));
    expect([brokenOff(21.7), brokenOff(25)]).toEqual([[], []]);
  });

  test('counts where the heater was read off by eye and nothing else is known of it', () => {
    expect(heatedWith((it) => (it > 0 ? it : Number.NaN))).toEqual([night.date]);
  });

  test('does not count where the log begins with the heater’s evening and breaks off in it', () => {
    const rows = (hours: number) => hours >= 16 && hours < 21.7;
    expect(heatedWith((it, hours) => (rows(hours) ? it : Number.NaN))).toEqual([]);
  });
});
