/** The house as a whole: where parts meet, its air, what stands inside, the limits beside it. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { designOf, exampleLimits, junctionDefaults, limitTableOf } from '../../../src/fabric/index.ts';
import { type House, junctionKinds } from '../../../src/house.ts';
import { airBy, changeAir, changeSize, divideBy, knowAirBy } from '../../../web/buildup/airEdits.ts';
import {
  addJunction,
  bridgesBy,
  changeJunction,
  knowBridgesBy,
  nameJunction,
  removeJunction,
} from '../../../web/buildup/bridgeEdits.ts';
import { changeElement } from '../../../web/buildup/elementEdits.ts';
import { changeLayer, moveLayer, removeLayer } from '../../../web/buildup/layerEdits.ts';
import { changeLimit, changeLimits, exampleAgain, ownLimits } from '../../../web/buildup/limitEdits.ts';
import {
  addPartition,
  beginLayers,
  changePartition,
  partitionPoints,
  removePartition,
} from '../../../web/buildup/partitionEdits.ts';
import { type Edit, tried } from '../../../web/buildup/tried.ts';

const text = readFileSync(new URL('../../../sample-logs/house.json', import.meta.url), 'utf8');
const sample = (): House => JSON.parse(text);

function after(...edits: Edit[]): House {
  return edits.reduce((house, edit) => {
    const outcome = tried(house, edit);
    if (outcome.kind === 'refused') throw new Error(outcome.reasons.join(' '));
    return outcome.house;
  }, sample());
}
function refusal(house: House, edit: Edit): string {
  const outcome = tried(house, edit);
  return outcome.kind === 'refused' ? outcome.reasons.join(' ') : 'taken';
}

describe('where parts meet', () => {
  const byLines: Edit = (house) => knowBridgesBy(house, 'junctions');

  test('one figure becomes a share on every m² with the same loss, to the two digits that it has', () => {
    const before = designOf(sample())?.bridges ?? 0;
    const now = designOf(after((house) => knowBridgesBy(house, 'share')))?.bridges ?? 0;
    // Two digits: off by at most 1 in 20 of the smallest, 0.1.
    expect(Math.abs(now / before - 1)).toBeLessThan(0.05);
  });

  test('lines begin around the ground floor, as long as its perimeter', () => {
    expect(after(byLines).thermalBridges).toEqual({
      junctions: [{ kind: 'ground-floor', lengthM: 28 }],
    });
  });

  test.each(junctionKinds)('a line of every kind has a default, and is taken: %s', (kind) => {
    const house = after(byLines, (it) => addJunction(it, kind));
    // COMPUTED: 10 m, which a line begins with, times the default.
    expect(designOf(house)?.junctions[1]).toBeCloseTo(10 * junctionDefaults[kind].usual, 12);
  });

  test('a figure of its own stands for the default, and emptied gives way to it again', () => {
    const own = after(byLines, (house) => changeJunction(house, 0, { psiWmK: 0.05 }));
    expect(designOf(own)?.bridges).toBeCloseTo(28 * 0.05, 12);
    const back = tried(own, (house) => changeJunction(house, 0, { psiWmK: undefined }));
    expect(back).toEqual({ kind: 'taken', house: after(byLines) });
  });

  test('a line that is in no table keeps a figure of its own: emptying it is refused', () => {
    const house = after(byLines, (it) => nameJunction(it, 0, null));
    expect(house.thermalBridges?.junctions?.[0]).not.toHaveProperty('kind');
    expect(refusal(house, (it) => changeJunction(it, 0, { psiWmK: undefined }))).toMatch(/psiWmK/);
    expect(refusal(house, (it) => changeJunction(it, 0, { lengthM: 0 }))).toMatch(/above 0/);
  });

  test('without the last line nothing is stated any more', () => {
    const house = after(byLines, (it) => removeJunction(it, 0));
    expect(house).not.toHaveProperty('thermalBridges');
    expect(bridgesBy(house)).toBe('nothing');
  });

  test('a share is proposed where nothing was stated', () => {
    const house = after(
      (it) => knowBridgesBy(it, 'nothing'),
      (it) => knowBridgesBy(it, 'share'),
    );
    // MEMORY: SAP 2012, Appendix K: y = 0.15 where details are unknown.
    expect(house.thermalBridges).toEqual({ yValue: 0.15 });
  });
});

describe('the air', () => {
  const tested: Edit = (house) => knowAirBy(house, 'pressure test');

  test('known in another way keeps what stands beside both ways', () => {
    const before = sample().ventilation?.asTestedAirChangesPerHour;
    const house = after(tested);
    expect(airBy(house)).toBe('pressure test');
    expect(house.ventilation?.asTestedAirChangesPerHour).toBe(before);
    expect(house.ventilation).not.toHaveProperty('airChangesPerHour');
  });

  test('a divisor stands for shelter and storeys, and without it its range goes as well', () => {
    const divided = after(
      tested,
      (house) => changeAir(house, { shelter: 'exposed', storeys: 2 }),
      (house) => divideBy(house, 15),
      (house) => changeAir(house, { divisorLow: 10 }),
    );
    expect(divided.ventilation).toMatchObject({ divisor: 15, divisorLow: 10 });
    expect(divided.ventilation).not.toHaveProperty('shelter');
    const back = tried(divided, (house) => divideBy(house, undefined));
    expect(back.kind === 'taken' && back.house.ventilation).not.toHaveProperty('divisorLow');
  });

  test('a lower end above the divisor is refused', () => {
    const house = after(tested, (it) => divideBy(it, 15));
    expect(refusal(house, (it) => changeAir(it, { divisorLow: 16 }))).toMatch(/at most 15/);
  });

  test('the volume cannot be emptied while it is needed', () => {
    expect(refusal(sample(), (house) => changeSize(house, { volumeM3: undefined }))).toMatch(/volume/);
    const house = after((it) => knowAirBy(it, 'nothing'));
    expect(refusal(house, (it) => changeSize(it, { volumeM3: undefined }))).toBe('taken');
  });
});

describe('walls and floors inside', () => {
  test.each(partitionPoints.map((point) => [point.name, point] as const))(
    'begun from “%s” they store heat',
    (_, point) => {
      const before = designOf(sample())?.heatCapacity ?? 0;
      const house = after((it) => addPartition(it, point));
      expect(designOf(house)?.heatCapacity).toBeGreaterThan(before);
    },
  );

  test('have layers that are edited like those of an element', () => {
    const place = { of: 'partitions', part: 0, layer: 1 } as const;
    const house = after(
      (it) => changeLayer(it, place, { thicknessMm: 140 }),
      (it) => moveLayer(it, place, -1),
    );
    expect(house.partitions?.[0].buildUp.layers.map(({ thicknessMm }) => thicknessMm)).toEqual([140, 13, 13]);
    expect(refusal(house, (it) => changeLayer(it, place, { thicknessMm: -1 }))).toMatch(/above 0/);
  });

  test('may lose all layers and get one again', () => {
    const place = { of: 'partitions', part: 0, layer: 0 } as const;
    const remove: Edit = (it) => removeLayer(it, place);
    const house = after(remove, remove, remove);
    expect(house.partitions?.[0].buildUp.layers).toEqual([]);
    expect(refusal(house, (it) => beginLayers(it, 0))).toBe('taken');
  });

  test('need an area, and are gone when the last is removed', () => {
    expect(refusal(sample(), (it) => changePartition(it, 0, { areaM2: undefined }))).toMatch(/missing/);
    const without = after(...(sample().partitions ?? []).map((): Edit => (it) => removePartition(it, 0)));
    expect(without).not.toHaveProperty('partitions');
  });
});

describe('the limits', () => {
  test('of one’s own begin as a copy of the example, and say so', () => {
    const table = limitTableOf(after(ownLimits));
    expect(table.limits.map(({ kind, transmittance }) => [kind, transmittance])).toEqual(
      exampleLimits.limits.map(({ kind, transmittance }) => [kind, transmittance]),
    );
    expect(table.note).toMatch(/copy of: .*example.*Check with your local code/);
  });

  test('are changed kind by kind; a kind that is emptied has none', () => {
    const house = after(
      ownLimits,
      (it) => changeLimit(it, 'wall', 0.2),
      (it) => changeLimit(it, 'door', undefined),
    );
    expect(house.limits?.uValues.wall).toBe(0.2);
    expect(house.limits?.uValues).not.toHaveProperty('door');
    expect(refusal(house, (it) => changeLimit(it, 'wall', 0))).toMatch(/above 0/);
  });

  test('want a real date', () => {
    const house = after(ownLimits);
    expect(refusal(house, (it) => changeLimits(it, { dated: '2027-02-30' }))).toMatch(/a date such as/);
    expect(refusal(house, (it) => changeLimits(it, { dated: '2027-02-28' }))).toBe('taken');
  });

  test('are the example again, as the house was before', () => {
    expect(after(ownLimits, exampleAgain)).toEqual(sample());
  });
});

test('insulation along the edge of a slab, or an aired space under the floor, changes its U-value', () => {
  const floor = 7;
  const transmittanceIn = (house: House) => designOf(house)?.elements[floor].transmittance ?? 0;
  const slab = transmittanceIn(sample());
  const edge = { lies: 'upright', reachMm: 600, thicknessMm: 50, conductivityWmK: 0.035 } as const;
  expect(transmittanceIn(after((it) => changeElement(it, floor, { edgeInsulation: edge })))).toBeLessThan(
    slab,
  );
  expect(transmittanceIn(after((it) => changeElement(it, floor, { underfloor: {} })))).not.toBe(slab);
  const both = { edgeInsulation: edge, underfloor: {} };
  expect(refusal(sample(), (it) => changeElement(it, floor, both))).toMatch(/suspended floor/);
});
