import { expect, test } from 'vitest';
import { meteredDays } from '../../../src/heatloss/stateSpace/meteredDays.ts';
import type { HouseRecord } from '../../../src/series/record.ts';

const DAY_CELLS = 144;

/** 20 °C inside, 0 °C outside; each day's mean heat [W], on for ten minutes of twenty. */
function recordOf(heat: readonly number[]): HouseRecord {
  const length = heat.length * DAY_CELLS;
  return {
    grid: { start: 0, step: 600, length },
    rooms: [],
    insideTemperature: new Float64Array(length).fill(20),
    outsideTemperature: new Float64Array(length),
    differenceSd: 0.2,
    insideResolution: 0.1,
    windSpeed: null,
    irradiance: null,
    heatingPower: Float64Array.from({ length }, (_, k) =>
      k % 2 === 0 ? 2 * heat[Math.floor(k / DAY_CELLS)] : 0,
    ),
    heatingPowerSd: 0.02,
  };
}

const days = (heat: readonly number[]) =>
  meteredDays(recordOf(heat), { from: 0, to: heat.length * 86_400 }, 100);

const COLD = 2000; // what 100 W/K lose over 20 K
const SUNNY = 100;

test('a day or two of little heat between cold ones is the sun', () => {
  expect(days([COLD, COLD, SUNNY, SUNNY, COLD, COLD])).toMatchObject({ used: 6, leftOut: 0 });
});

test('three days of little heat may be another stove', () => {
  const found = days([COLD, COLD, COLD, SUNNY, SUNNY, SUNNY, COLD, COLD]);
  expect(found).toMatchObject({ used: 5, leftOut: 3 });
  expect(found?.heat[3 * DAY_CELLS]).toBeNaN();
});

test('little heat before the first cold day is not counted', () => {
  expect(days([SUNNY, COLD, COLD, COLD, COLD, COLD])).toMatchObject({
    used: 5,
    leftOut: 1,
    first: DAY_CELLS,
  });
});

test('heat that never changes is known at every instant', () => {
  const record = recordOf([COLD, COLD, COLD, COLD, COLD]);
  const steady = { ...record, heatingPower: new Float64Array(record.grid.length).fill(COLD) };
  expect(meteredDays(steady, { from: 0, to: 5 * 86_400 }, 100)?.used).toBe(5);
});
