import { describe, expect, test } from 'vitest';
import { designOf } from '../../../src/fabric/index.ts';
import { houseSchema } from '../../../src/house.ts';
import { areaOf, asDrawn, floorTransmittance } from '../plan.ts';
import { drawnHouse } from '../records/drawnHouse.ts';
import { runHouse } from '../records/houseRun.ts';
import { loggersOf } from '../records/logged.ts';
import { heatLoss } from '../truth.ts';
import { boxPlan } from './box.ts';
import { houseTypeNamed, houseTypes } from './index.ts';

const houses = houseTypes.map((type) => {
  const run = runHouse(type, 1, 3600);
  return { type, plan: run.plan, house: drawnHouse(run, loggersOf(run)) };
});

describe('the houses that methods are proved on', () => {
  test('are of at least twelve kinds, each with a name of its own', () => {
    expect(new Set(houseTypes.map(({ name }) => name)).size).toBeGreaterThanOrEqual(12);
  });

  test.each(houses)('$type.name: its house.json is one that the schema takes', ({ house }) => {
    expect(houseSchema.safeParse(house).error?.issues).toBeUndefined();
  });

  test.each(houses)('$type.name: two reckonings of its design agree', ({ type, plan, house }) => {
    // The same standards, written twice from their texts. Areas in house.json are rounded to 0.001 m², of 1.5 m² or more.
    const own = heatLoss(plan, asDrawn, type.drawnAirChanges.tested);
    expect(Math.abs((designOf(house)?.heatLossAsTested ?? 0) / own.whole - 1)).toBeLessThan(3e-4);
  });

  test.each(houses)(
    '$type.name: its rooms hold its whole floor, and its air comes in somewhere',
    ({ type, plan }) => {
      const sum = (key: 'floorArea' | 'inletShare') => plan.rooms.reduce((all, room) => all + room[key], 0);
      const { length, width, storeys } = type.box;
      expect(sum('floorArea')).toBeCloseTo(length * width * storeys, 9);
      expect(sum('inletShare')).toBeCloseTo(1, 9);
    },
  );

  test('a mid terrace loses nothing by definition through its party walls', () => {
    const plan = boxPlan(houseTypeNamed('terrace, mid house').box);
    expect(areaOf(plan, 'Party walls')).toBeGreaterThan(80);
    expect(heatLoss(plan, asDrawn, 0).elements['Party walls']).toBe(0);
  });

  test('behind knee walls nine tenths of the outdoor difference count', () => {
    const plan = boxPlan(houseTypeNamed('loft room').box);
    const { elements } = heatLoss(plan, asDrawn, 0);
    const walls = plan.elements.find(({ name }) => name === 'Knee walls');
    const exposed = {
      ...plan,
      elements: plan.elements.map((it) => (it === walls ? { ...it, temperatureFactor: 1 } : it)),
    };
    expect(elements['Knee walls'] / heatLoss(exposed, asDrawn, 0).elements['Knee walls']).toBeCloseTo(0.9, 9);
  });

  test('under a suspended floor part of the heat goes with the outdoor air, under a slab none', () => {
    const share = (name: string) => {
      const { groundFloor } = boxPlan(houseTypeNamed(name).box);
      return groundFloor === undefined ? Number.NaN : floorTransmittance(groundFloor, 35, asDrawn).airShare;
    };
    expect(share('timber cabin')).toBeGreaterThan(0.2);
    expect(share('studio on a bare slab')).toBe(0);
  });
});
