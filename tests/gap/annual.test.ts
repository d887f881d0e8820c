import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { designedYear, measuredYear } from '../../src/gap/index.ts';
import { logInterval } from '../../src/maths/logInterval.ts';
import { codesOf, invented, inventedDesign } from '../fabric/inventedHouse.ts';

const KWH = 3.6e6;
const parts = {
  volumeM3: 200,
  elements: [{ name: 'Walls', areaM2: 100, uValue: 0.5 }],
  ventilation: { airChangesPerHour: 0.5, asTestedAirChangesPerHour: 0.2 },
};
const [house, design] = [invented(parts), inventedDesign(parts)];
const abroad = invented({ ...parts, location: { latitude: 60, longitude: 11, timeZone: 'Europe/Oslo' } });
const finished = true;

describe('a year of the house as drawn', () => {
  const year = designedYear(house, design);

  test('needs its heat loss in use times 2463 K·day', () => {
    // COMPUTED: 50 + 0.33·0.5·200 = 83 W/K, READ second-hand: 2463; 83·24·2463/1000
    expect((year?.heatDemand?.value ?? 0) / KWH).toBeCloseTo(4906.3, 1);
  });

  test('and at 20 °C inside and −3 °C outside 23 K of it', () => {
    expect(year?.heatLoad?.value).toBeCloseTo(83 * 23, 9); // COMPUTED
  });

  test('is not told where no degree days are known', () => {
    expect(designedYear(abroad, design)).toBeNull();
    expect(measuredYear(abroad, design, { heatLoss: logInterval(90, 0.1), finished })).toBeNull();
  });
});

describe('a year as measured', () => {
  const heatLoss = logInterval(90, 0.1);

  test('adds what the house as drawn loses more in use than with its vents shut, with the doubt of both', () => {
    const year = measuredYear(house, design, { heatLoss, finished });
    // COMPUTED: 0.33·0.3·200 = 19.8 W/K; doubts 30 % of 33 and of 13.2 W/K
    expect((year?.heatLoad?.value ?? 0) / 23).toBeCloseTo(90 + 19.8, 9);
    const above = Math.hypot(heatLoss.high - 90, 9.9, 3.96);
    expect((year?.heatLoad?.high ?? 0) / 23).toBeCloseTo(109.8 + above, 6);
    expect(codesOf(year?.notes ?? [])).toEqual(['annual-for-orientation', 'annual-vents-added']);
  });

  test('with the vents open counts the air as it was', () => {
    const open = { ...house, conditions: { ventsClosed: false } };
    const year = measuredYear(open, design, { heatLoss, finished });
    expect((year?.heatDemand?.value ?? 0) / KWH).toBeCloseTo((90 * 24 * 2463) / 1000, 6);
    expect(year?.notes).toContainEqual({ code: 'annual-air-as-measured', ventsShut: false });
  });

  test('without a figure as tested, or without a design, says that the vents were perhaps shut', () => {
    const untested = inventedDesign({ ...parts, ventilation: { airChangesPerHour: 0.5 } });
    for (const drawn of [untested, null])
      expect(measuredYear(house, drawn, { heatLoss, finished })?.notes).toContainEqual({
        code: 'annual-air-as-measured',
        ventsShut: true,
      });
  });

  test('of a house that is not finished says so', () => {
    const year = measuredYear(house, design, { heatLoss, finished: false });
    expect(codesOf(year?.notes ?? [])).toContain('annual-of-unfinished');
  });

  test('beside a heated neighbour counts what goes there on the cold day, and says when nobody knows how warm it is', () => {
    const beside = {
      ...parts,
      elements: [...parts.elements, { name: 'Party wall', areaM2: 40, uValue: 0.5, to: 'adjacent' }],
    };
    const stated = invented({ ...beside, conditions: { neighbour: { temperatureC: 15, plusMinusK: 2 } } });
    const cold = measuredYear(stated, inventedDesign(beside), { heatLoss, finished });
    // COMPUTED: 40·0.5·(20 − 15) = 100 W on top of 109.8·23
    expect(cold?.heatLoad?.value).toBeCloseTo(109.8 * 23 + 100, 6);
    const unknown = measuredYear(invented(beside), inventedDesign(beside), { heatLoss, finished });
    expect(codesOf(unknown?.notes ?? [])).toContain('annual-neighbour-as-warm');
  });

  test('grows with the heat loss, and its interval with that of the heat loss', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 500, noNaN: true }),
        fc.double({ min: 1.1, max: 3, noNaN: true }),
        (value, by) => {
          const [one, more] = [value, value * by].map((it) =>
            measuredYear(house, null, { heatLoss: logInterval(it, 0.1), finished }),
          );
          for (const key of ['value', 'low', 'high'] as const)
            expect((more?.heatDemand?.[key] ?? 0) / (one?.heatDemand?.[key] ?? 0)).toBeCloseTo(by, 9);
        },
      ),
    );
  });
});

test('a design twice the size needs twice the heat and twice the heater', () => {
  const twice = inventedDesign({
    ...parts,
    volumeM3: 400,
    elements: [{ name: 'Walls', areaM2: 200, uValue: 0.5 }],
  });
  const [one, two] = [design, twice].map((it) => designedYear(house, it));
  expect((two?.heatDemand?.high ?? 0) / (one?.heatDemand?.high ?? 0)).toBeCloseTo(2, 9);
  expect((two?.heatLoad?.low ?? 0) / (one?.heatLoad?.low ?? 0)).toBeCloseTo(2, 9);
});
