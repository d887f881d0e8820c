/**
 * The heat that a cubic metre of air carries. COMPUTED: an ideal gas of two-atom molecules holds 7/2·p/T of heat per
 * volume and kelvin at constant pressure, whatever its molar mass (cp = 7/2·R/M, density = p·M/(R·T)).
 */
import { expect, test } from 'vitest';
import { airDensity } from '../../src/air/index.ts';
import { ventilationLoss } from '../../src/fabric/index.ts';

const carried = (pressure: number, celsius: number) => (3.5 * pressure) / (celsius + 273.15) / 3600;

test('an air change of a cubic metre loses what air at 20 °C carries, to 2 %', () => {
  // COMPUTED: 0.3360 Wh/(m³K) at sea level; 0.33 is what national procedures round to
  expect(carried(101_325, 20)).toBeCloseTo(0.336, 4);
  expect(Math.abs(ventilationLoss(1, 1) / carried(101_325, 20) - 1)).toBeLessThan(0.02);
});

test('and lies within what air carries from 0 °C by the sea to 25 °C at 500 m', () => {
  // COMPUTED: 954.6 hPa at 500 m by the standard atmosphere
  expect(ventilationLoss(1, 1)).toBeLessThan(carried(101_325, 0));
  expect(ventilationLoss(1, 1)).toBeGreaterThan(carried(95_460, 25));
});

test('the density of air agrees: 1.204 kg/m³ times 1005 J/(kgK)', () => {
  // COMPUTED: cp = 7/2·8.314463/0.0289652 = 1004.7 J/(kgK)
  expect((airDensity(20, 0) * 1004.7) / 3600).toBeCloseTo(carried(101_325, 20), 3);
});
