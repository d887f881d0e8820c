/** What drying mass and stated gains leave of the estimates from readings alone. */
import { describe, expect, test } from 'vitest';
import type { StageNights } from '../../src/cooling/index.ts';
import { type HeatLossEstimate, underConditions } from '../../src/heatloss/index.ts';
import type { House } from '../../src/house.ts';
import { timeAt } from '../../src/series/grid.ts';
import { say } from '../../src/words/index.ts';
import { heatedHouse } from './heatedHouse.ts';
import { house } from './meteredHouse.ts';

const record = heatedHouse({ power: () => 0 });
const insideTemperature = record.insideTemperature.map(() => 20);
const outsideTemperature = record.outsideTemperature.map(() => 5);
const stage: StageNights = {
  name: 'All',
  from: record.grid.start,
  to: timeAt(record.grid, record.grid.length - 1),
  complete: true,
  missing: [],
  nights: [],
  crossing: [],
};
const balance: HeatLossEstimate = {
  method: 'heat-balance',
  tier: 'metered',
  heatLossCoefficient: { value: 120, low: 100, high: 144 },
  notes: [],
};
const under = (extra: Partial<House>) => {
  const given = { house: house(extra), record: { ...record, insideTemperature, outsideTemperature } };
  return underConditions([balance], { ...given, design: null, stage }, 120)[0];
};
const codes = ({ notes }: HeatLossEstimate) => notes.map(({ code }) => code);

describe('while plaster dries', () => {
  const wet = under({ conditions: { wetTradesWithinWeeks: 0 } });

  test('a heat balance is wider by what 150 W are over the difference of temperatures, and it is said why', () => {
    // COMPUTED: 150 W / 15 K = 10 W/K of 120; √(ln(1.2)² + (1.96·10/120)²) = 0.2449
    expect(Math.log(wet.heatLossCoefficient.high / wet.heatLossCoefficient.value)).toBeCloseTo(0.2449, 3);
    expect(Math.log(wet.heatLossCoefficient.value / wet.heatLossCoefficient.low)).toBeCloseTo(0.2449, 3);
    expect(wet.heatLossCoefficient.value).toBe(120);
    expect(codes(wet)).toEqual(['still-drying']);
  });

  test('a dry house keeps its interval and says nothing', () => {
    expect(under({})).toEqual(balance);
  });
});

describe('constant gains', () => {
  test('that alone would hold the house warmer than it was ask to check the key', () => {
    // as drawn it loses 120 W/K · 15 K = 1800 W
    const beyond = under({ constantGainsW: 20_000 });
    const [note] = beyond.notes;
    expect(note).toMatchObject({ code: 'gains-beyond-house', gains: 20_000 });
    expect(note.code === 'gains-beyond-house' ? note.lost : 0).toBeCloseTo(1800, 6);
    expect(say(note).remedy).toContain('"constantGainsW"');
  });

  test('of a dwelling in use do not', () => {
    expect(codes(under({ constantGainsW: 400 }))).toEqual([]);
  });
});
