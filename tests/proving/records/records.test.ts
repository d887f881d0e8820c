import { describe, expect, test } from 'vitest';
import { houseSchema } from '../../../src/house.ts';
import { houseTypeNamed } from '../houses/index.ts';
import { heatLoss } from '../truth.ts';
import { withDesign } from './cache.ts';
import { day, days } from './calendar.ts';
import { designHeatLoss } from './drawnHouse.ts';
import { runHouse } from './houseRun.ts';
import { type ProvingRecord, tiers } from './provingRecord.ts';
import { rawRecords } from './records.ts';

const house = runHouse(houseTypeNamed('extension, neighbour logged'), 910, 600);
const records = rawRecords(house).map(withDesign);

function recordOf(tier: ProvingRecord['tier']): ProvingRecord {
  const found = records.find((it) => it.tier === tier);
  if (found === undefined) throw new Error(`no record of tier "${tier}"`);
  return found;
}

/** Mean leakage by hand: of the steps that `counts`, in local time. */
function meanChanges(from: number, to: number, counts: (hour: number) => boolean): number {
  const { run, site } = house;
  const counted = [...run.airChangesPerHour].filter((_, k) => {
    const time = run.start + k * run.step;
    return time >= from && time < to && counts((time / 3600 + site.fromUtc) % 24);
  });
  return counted.reduce((sum, it) => sum + it, 0) / counted.length;
}

describe('the records of one simulated house', () => {
  test('there is one of every tier, and each house.json is one that the schema takes', () => {
    expect(records.map(({ tier }) => tier)).toEqual([...tiers]);
    for (const record of records) expect(houseSchema.safeParse(record.house).error?.issues).toBeUndefined();
  });

  test('every series is as long as the grid, and no temperature is missing', () => {
    for (const { record, noiseFree } of records)
      for (const { grid, insideTemperature, outsideTemperature, rooms } of [record, noiseFree])
        for (const series of [insideTemperature, outsideTemperature, ...rooms.map((it) => it.temperature)]) {
          expect(series.length).toBe(grid.length);
          expect(series.some(Number.isNaN)).toBe(false);
        }
  });

  test('by nights, heat loss is fabric, bridges and 0.33 V times the leakage from 18:00 to 08:00', () => {
    const from = house.start + (days.after.from + 0.5) * day;
    const changes = meanChanges(from, from + 14 * day, (hour) => hour >= 18 || hour < 8);
    const volume = house.plan.rooms.reduce((sum, room) => sum + room.volume, 0);
    const [stage] = recordOf('loggers, layers known').truth.stages;
    expect(stage.leakage).toBeCloseTo(0.33 * volume * changes, 9);
    const { elements, bridges } = heatLoss(house.plan, house.after, 0);
    const toOutside = Object.entries(elements).filter(([name]) => name !== 'Party walls');
    expect(stage.fabric).toBeCloseTo(
      toOutside.reduce((sum, [, part]) => sum + part, bridges),
      9,
    );
    expect(stage.heatLossCoefficient).toBeCloseTo(stage.fabric + stage.leakage, 9);
  });

  test('by metered days, the leakage of whole days counts', () => {
    const { from, to } = house.course.meteredDays;
    const volume = house.plan.rooms.reduce((sum, room) => sum + room.volume, 0);
    const [stage] = recordOf('metered days, irradiance').truth.stages;
    expect(stage.leakage).toBeCloseTo(0.33 * volume * meanChanges(from, to, () => true), 9);
  });

  test('in the metered days the meter counts all heat there is but the constant gains', () => {
    const { record } = recordOf('metered days, irradiance');
    const { from, to } = house.course.meteredDays;
    const given = [...house.run.heating].reduce((sum, heating, k) => {
      const time = house.run.start + (k - 0.5) * house.run.step;
      return time > from && time < to ? sum + heating * house.run.step : sum;
    }, 0);
    const counted = (record.heatingPower ?? new Float64Array())
      .slice(1)
      .reduce((sum, power) => sum + power * 600, 0);
    // A meter's scale is off by 1 % (one deviation); the half cells at both ends are a three-hundredth of the spell.
    expect(Math.abs(counted / given - 1)).toBeLessThan(0.045);
    expect(record.irradiance).not.toBeNull();
    expect(recordOf('metered days, no irradiance').record.irradiance).toBeNull();
  });

  test('loggers alone know of no heat; the heated night knows its heater', () => {
    expect(recordOf('loggers, layers known').record.heatingPower).toBeNull();
    expect(recordOf('before and after').record.heatingPower).toBeNull();
    const power = recordOf('one heated night').record.heatingPower ?? new Float64Array();
    expect(Math.max(...power.filter((it) => !Number.isNaN(it)))).toBeGreaterThan(900);
  });

  test('known by transmittances alone, the design loses as much, and its capacity is a stated figure', () => {
    const { house: byU } = recordOf('loggers, U-values and a capacity figure');
    const { house: byLayers } = recordOf('loggers, layers known');
    expect(designHeatLoss(byU)).toBeCloseTo(designHeatLoss(byLayers), 6);
    expect(byU.partitions).toBeUndefined();
    expect(byU.elements?.every(({ buildUp }) => buildUp === undefined)).toBe(true);
    expect(byU.heatCapacity?.kJPerM2K).toBeGreaterThan(20);
  });

  test('the ratio is the truth after over the truth before', () => {
    const { stages, ratio } = recordOf('before and after').truth;
    expect(stages.map(({ name }) => name)).toEqual(['Before', 'After']);
    expect(ratio).toBeCloseTo(stages[1].heatLossCoefficient / stages[0].heatLossCoefficient, 12);
  });

  test('the neighbour is logged where the drawings have a logger there', () => {
    const places = recordOf('loggers, layers known').record.rooms.map(({ place }) => place);
    expect(places).toContain('adjacent');
    const unlogged = rawRecords(runHouse(houseTypeNamed('extension, neighbour not logged'), 910, 1200));
    expect(unlogged[0].record.rooms.map(({ place }) => place)).not.toContain('adjacent');
  });
});
