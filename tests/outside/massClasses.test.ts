/** Heat-capacity classes of ISO 13790:2008 (per floor area) and ISO 52016-1:2017 (per area of an element). */
import { describe, expect, test } from 'vitest';
import { classHeatCapacities, elementClassHeatCapacities } from '../../src/fabric/massClasses.ts';

const kilojoules = (classes: Readonly<Record<string, number>>) =>
  Object.entries(classes).map(([name, capacity]) => [name, capacity / 1e3]);

describe('the classes, in kJ/(m²K)', () => {
  test('of a house, per floor area', () => {
    // READ second-hand: ISO 13790:2008, 12.3.1.2, Table 12
    expect(kilojoules(classHeatCapacities)).toEqual([
      ['very light', 80],
      ['light', 110],
      ['medium', 165],
      ['heavy', 260],
      ['very heavy', 370],
    ]);
  });
  test('of an element, per its own area', () => {
    // MEMORY: ISO 52016-1:2017, Table B.14; only that the table has these five names was READ
    expect(kilojoules(elementClassHeatCapacities)).toEqual([
      ['very light', 50],
      ['light', 75],
      ['medium', 110],
      ['heavy', 175],
      ['very heavy', 250],
    ]);
  });
});
