/** What holds of an assessment whatever the house: order, splitting, shares, one heated night for two stages. */
import { describe, expect, test } from 'vitest';
import { readHouseFolder } from '../server/houseFolder.ts';
import { assess } from '../src/assess.ts';
import type { Estimate } from '../src/assessment.ts';
import { reportOf } from '../src/report.ts';
import { timeAt } from '../src/series/grid.ts';
import type { HouseRecord } from '../src/series/record.ts';
import { codesOf } from './fabric/inventedHouse.ts';
import { lastOf, proved, told } from './proving/judging/told.ts';

const cabin = proved('timber cabin', 'loggers, layers known');
const whole = told(cabin.house, cabin.record);

const widthOf = (it: Estimate | null) => (it === null ? Number.NaN : Math.log(it.high / it.low));

test('the order of the loggers changes nothing', async () => {
  const reading = await readHouseFolder(new URL('../sample-logs', import.meta.url).pathname);
  if (reading.kind !== 'house') throw new Error('no house');
  const { house, files } = reading;
  const [there, back] = [house, { ...house, loggers: house.loggers.toReversed() }].map((it) => {
    const assessing = assess(it, files);
    if (assessing.kind !== 'assessed') throw new Error('not assessed');
    const { stages, comparisons } = reportOf(assessing.evidence);
    return [
      ...stages.flatMap(({ estimates, timeConstantH }) => [
        timeConstantH,
        ...estimates.map(({ heatLossWK }) => heatLossWK),
      ]),
      ...comparisons.map(({ heatLossRatio }) => heatLossRatio),
    ];
  });
  expect(back).toHaveLength(there.length);
  // Sums in another order round otherwise, and the search ends a hair beside: a tenth of the last digit told is nothing.
  back.forEach((it, i) => {
    for (const key of ['value', 'low', 'high'] as const)
      expect(Math.abs((it?.[key] ?? Number.NaN) / (there[i]?.[key] ?? Number.NaN) - 1)).toBeLessThan(1e-3);
  });
});

describe('one stage split in two where nothing was changed', () => {
  const { grid } = cabin.record;
  const dateOf = (cell: number) => new Date(timeAt(grid, cell) * 1000).toISOString().slice(0, 10);
  const middle = dateOf(grid.length >> 1);
  const split = told(
    {
      ...cabin.house,
      stages: [
        { name: 'First half', from: dateOf(0), to: middle },
        { name: 'Second half', from: middle, to: dateOf(grid.length - 1) },
      ],
    },
    cabin.record,
  );

  test('shows no change for certain', () => {
    const { low, high } = split.comparisons[0].heatLossRatio ?? { low: Number.NaN, high: Number.NaN };
    expect(low).toBeLessThan(1);
    expect(high).toBeGreaterThan(1);
  });

  test('has the heat loss of the whole in the interval of either half', () => {
    const { value } = lastOf(whole).heatLossWK ?? { value: Number.NaN };
    expect(split.stages).toHaveLength(2);
    for (const { heatLossWK } of split.stages) {
      expect(heatLossWK?.low).toBeLessThan(value);
      expect(heatLossWK?.high).toBeGreaterThan(value);
    }
  });
});

test.each([
  'loggers, layers known',
  'loggers, U-values and a capacity figure',
  'one heated night',
  'metered days, irradiance',
] as const)(
  '%s: the shares of the doubt add up to 1, none is below 0, and the largest comes first',
  (tier) => {
    const { house, record } = proved('timber cabin', tier);
    const shares = (lastOf(told(house, record)).doubts ?? []).map(({ share }) => share);
    expect(shares.reduce((sum, it) => sum + it, 0)).toBeCloseTo(1, 9);
    expect(shares.at(-1)).toBeGreaterThanOrEqual(0);
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
  },
);

describe('one heated night after the change', () => {
  const both = proved('timber cabin', 'before and after');
  const heated = proved('timber cabin', 'one heated night');
  const loggersOnly = told(both.house, both.record);
  const calibrated = told({ ...both.house, heat: heated.house.heat }, withHeatOf(heated.record, both.record));

  test('tells of the stage before it as well, and says whose night it was', () => {
    expect(calibrated.stages.map(({ tier }) => tier)).toEqual(['heated-night', 'heated-night']);
    const [before, after] = calibrated.stages.map(({ estimates }) => estimates[0].notes);
    const note = before.find(({ code }) => code === 'calibrated-by-stage');
    expect(note?.text).toContain('“After”');
    expect(codesOf(after)).toContain('heated-nights-used');
  });

  test('makes both narrower than loggers alone', () => {
    calibrated.stages.forEach(({ heatLossWK }, i) => {
      expect(widthOf(heatLossWK)).toBeLessThan(widthOf(loggersOnly.stages[i].heatLossWK));
    });
  });
});

/** The heat of one record laid on the longer grid of another, not known outside of it. */
function withHeatOf(short: HouseRecord, long: HouseRecord): HouseRecord {
  const heatingPower = new Float64Array(long.grid.length).fill(Number.NaN);
  const offset = Math.round((short.grid.start - long.grid.start) / long.grid.step);
  heatingPower.set(short.heatingPower ?? [], offset);
  return { ...long, heatingPower, heatingPowerSd: short.heatingPowerSd };
}
