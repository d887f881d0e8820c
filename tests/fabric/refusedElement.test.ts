/** An element whose layers the standard refuses, from its own figure to the house's answer. */
import { describe, expect, test } from 'vitest';
import { codesOf, inventedDesign } from './inventedHouse.ts';

const steel = { name: 'steel stud', widthMm: 1.2, spacingMm: 600, conductivityWmK: 50 };
const wool = {
  name: 'wool',
  thicknessMm: 100,
  conductivityWmK: 0.035,
  densityKgM3: 25,
  specificHeatJkgK: 1030,
};
const wall = { name: 'Steel wall', areaM2: 40, buildUp: { layers: [{ ...wool, bridge: steel }] } };
const roof = { name: 'Roof', areaM2: 60, uValue: 0.15 };

describe('a wall with metal through its insulation', () => {
  const design = inventedDesign({ floorAreaM2: 50, elements: [wall, roof] });
  const [refused, other] = design.elements;
  test('has no transmittance and no heat loss, but all its workings', () => {
    expect(refused.transmittance).toBeNull();
    expect(refused.heatLoss).toBeNull();
    expect(refused.transmission?.upper).toBeGreaterThan(refused.transmission?.lower ?? Infinity);
    expect(other.heatLoss).toBeCloseTo(9, 12);
  });
  test('leaves the house without a heat loss, and the house says which wall and why', () => {
    expect([design.heatLoss, design.fabric, design.meanTransmittance, design.timeConstant]).toEqual(
      Array(4).fill(null),
    );
    expect([design.ranges.heatLoss, design.ranges.fabric, design.ranges.elements[0]]).toEqual(
      Array(3).fill(null),
    );
    expect(design.refusals.map(({ code, where }) => [code, where.key])).toEqual([
      ['no-transmittance', 'elements'],
      ['metal-bridges-insulation', 'elements[0].buildUp.layers[0].bridge'],
      ['combined-method-out-of-range', 'elements[0].buildUp.layers'],
    ]);
  });
  test('still has its mass in the heat capacity', () => {
    expect(design.heatCapacity).toBeGreaterThan(0);
  });
  test('counts by a U-value that is given beside its layers', () => {
    const stated = inventedDesign({ floorAreaM2: 50, elements: [{ ...wall, uValue: 0.45 }, roof] });
    // COMPUTED by hand: 18 + 9
    expect(stated.heatLoss).toBeCloseTo(27, 12);
    expect(stated.refusals).toEqual([]);
    expect(stated.elements[0].findings).toContainEqual({
      code: 'stated-beside-layers',
      stated: 0.45,
      byLayers: null,
      where: { key: 'elements[0].uValue' },
    });
  });
});

test('a U-value beside layers that give one of their own is taken, and both are told', () => {
  const [element] = inventedDesign({
    elements: [
      { name: 'Wall', areaM2: 10, uValue: 0.3, buildUp: { layers: [{ ...wool, conductivityWmK: 0.04 }] } },
    ],
  }).elements;
  expect(element.heatLoss).toBeCloseTo(3, 12);
  // COMPUTED by hand: 1/(0.17 + 2.5)
  expect(element.findings).toContainEqual({
    code: 'stated-beside-layers',
    stated: 0.3,
    byLayers: expect.closeTo(1 / 2.67, 9),
    where: { key: 'elements[0].uValue' },
  });
});

test('a U-value of 18 is questioned: 0.18 was likely meant', () => {
  const [element] = inventedDesign({ elements: [{ name: 'Wall', areaM2: 10, uValue: 18 }] }).elements;
  expect(codesOf(element.findings)).toEqual(['transmittance-doubtful']);
  expect(element.findings[0]).toMatchObject({ likely: 0.18 });
});
