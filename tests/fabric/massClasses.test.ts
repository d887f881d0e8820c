/** Elements of which nobody knows the layers, but somebody how heavy they are. */
import { describe, expect, test } from 'vitest';
import { codesOf, inventedDesign } from './inventedHouse.ts';

const wall = { name: 'Stone walls', areaM2: 100, uValue: 0.4 };

describe('an element known by its U-value and a class', () => {
  // COMPUTED by hand with the classes of ISO 52016-1:2017, Table B.14 (MEMORY) and 10 kJ/(m²K) of furniture and air
  // (MEMORY): 100 m² · 175 kJ/(m²K) + 50 m² · 10 kJ/(m²K) = 18.0 MJ/K
  const design = inventedDesign({ floorAreaM2: 50, elements: [{ ...wall, massClass: 'heavy' }] });
  test('stores what its class says, beside furniture and air', () => {
    expect(design.heatCapacity).toBeCloseTo(18e6, 3);
  });
  test('leaves a quarter of doubt on its part, and says where it is from', () => {
    // √((0.25·17.5)² + (0.15·0.5)²)/18
    expect(design.heatCapacitySd).toBeCloseTo(Math.hypot(0.25 * 17.5, 0.15 * 0.5) / 18, 9);
    expect(design.findings).toContainEqual({
      code: 'mass-by-class',
      elements: ['Stone walls'],
      relativeSd: 0.25,
      where: { key: 'elements' },
    });
    expect(codesOf(design.findings)).not.toContain('mass-unknown');
    expect(codesOf(design.findings)).not.toContain('heat-capacity-by-class');
  });
  test('is surer than one of which nothing is said', () => {
    const layered = { name: 'Floor', areaM2: 50, uValue: 0.2, massClass: 'medium' };
    const sdOf = (it: object) => inventedDesign({ floorAreaM2: 50, elements: [it, layered] }).heatCapacitySd;
    expect(Number(sdOf({ ...wall, massClass: 'very light' }))).toBeLessThan(Number(sdOf(wall)));
  });
});

test('an element whose layers tell what it stores keeps that, whatever its class', () => {
  const plaster = {
    name: 'plaster',
    thicknessMm: 13,
    conductivityWmK: 0.5,
    densityKgM3: 1300,
    specificHeatJkgK: 1000,
  };
  const layered = { name: 'Wall', areaM2: 100, buildUp: { layers: [plaster] } };
  const [bare, classed] = [layered, { ...layered, massClass: 'very heavy' }].map((it) =>
    inventedDesign({ floorAreaM2: 50, elements: [it] }),
  );
  expect(classed.heatCapacity).toBe(bare.heatCapacity);
  expect(codesOf(classed.findings)).not.toContain('mass-by-class');
});

test('an element whose layers have no density stores what its class says', () => {
  const wool = { name: 'wool', thicknessMm: 100, conductivityWmK: 0.04 };
  const element = { name: 'Wall', areaM2: 10, buildUp: { layers: [wool] }, massClass: 'light' };
  // COMPUTED by hand: 10 m² · 75 kJ/(m²K) (MEMORY)
  expect(inventedDesign({ elements: [element] }).heatCapacity).toBeCloseTo(750e3, 6);
});

test('a capacity stated for the house, or its class, stands whatever the classes of its elements', () => {
  const parts = { floorAreaM2: 50, elements: [{ ...wall, massClass: 'very heavy' }] };
  expect(inventedDesign({ ...parts, heatCapacity: { kJPerM2K: 110 } }).heatCapacity).toBeCloseTo(5.5e6, 3);
  expect(inventedDesign({ ...parts, heatCapacity: { class: 'light' } }).heatCapacity).toBeCloseTo(5.5e6, 3);
});
