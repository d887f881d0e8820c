import { describe, expect, test } from 'vitest';
import { junctionDefaults } from '../../src/fabric/bridges.ts';
import { junctionKinds } from '../../src/house.ts';
import { codesOf, inventedDesign } from './inventedHouse.ts';

const elements = [{ name: 'Walls', areaM2: 100, uValue: 0.2 }];
const design = (thermalBridges: object) => inventedDesign({ elements, thermalBridges });

describe('junctions', () => {
  test('with their own ψ come to ψ times length', () => {
    const result = design({
      junctions: [
        { lengthM: 30, psiWmK: 0.06 },
        { lengthM: 10, psiWmK: -0.05 },
      ],
    });
    // COMPUTED by hand: 1.8 - 0.5
    expect(result.bridges).toBeCloseTo(1.3, 12);
    expect(result.junctions).toEqual([expect.closeTo(1.8, 12), expect.closeTo(-0.5, 12)]);
    expect(codesOf(result.findings)).not.toContain('junctions-by-default');
  });
  test('without one take the default of their kind, and it is said once for each kind', () => {
    const junctions = [
      { kind: 'sill', lengthM: 10 },
      { kind: 'sill', lengthM: 2 },
      { kind: 'ground-floor', lengthM: 30 },
      { kind: 'corner', lengthM: 5, psiWmK: 0.09 },
    ];
    const result = design({ junctions });
    // MEMORY: SAP 2012 Table K1, 0.08 and 0.32; COMPUTED by hand: 0.8 + 0.16 + 9.6 + 0.45
    expect(result.bridges).toBeCloseTo(11.01, 12);
    expect(result.findings).toContainEqual({
      code: 'junctions-by-default',
      kinds: ['sill', 'ground-floor'],
      where: { key: 'thermalBridges.junctions' },
    });
  });
  test('have a default of each kind, and a careful detail is never worse', () => {
    for (const kind of junctionKinds) {
      const { usual, careful } = junctionDefaults[kind];
      expect(careful).toBeLessThanOrEqual(usual);
    }
  });
});

test('a range stands beside every way of telling bridges, widest for an allowance', () => {
  const halfWidth = (thermalBridges: object) => {
    const { bridges } = design(thermalBridges).ranges;
    return (bridges.high - bridges.low) / 2 / bridges.value;
  };
  // PRACTICE: one standard deviation of 20, 25 and 30 %; COMPUTED by hand: times 1.96
  expect(halfWidth({ psiLengthWK: 5 })).toBeCloseTo(0.392, 9);
  expect(halfWidth({ junctions: [{ kind: 'jamb', lengthM: 50 }] })).toBeCloseTo(0.49, 9);
  expect(halfWidth({ yValue: 0.05 })).toBeCloseTo(0.588, 9);
});
