import { expect, test } from 'vitest';
import { airChangesFromPermeability, ventilationLoss } from '../../src/fabric/ventilation.ts';

test('half an air change an hour in 240 m³ loses 39.6 W/K', () => {
  // MEMORY: SAP worksheet (38), 0.33·n·V
  expect(ventilationLoss(0.5, 240)).toBeCloseTo(39.6, 12);
});

test('a heat recovery of 80 % leaves a fifth of it', () => {
  // COMPUTED by hand: 0.2 · 39.6
  expect(ventilationLoss(0.5, 240, 0.8)).toBeCloseTo(7.92, 12);
});

test('a permeability of 5 over 240 m² about 300 m³ is 0.2 air changes on an everyday day', () => {
  // COMPUTED by hand: 5·240/300/20; the divisor of 20 is MEMORY (SAP, Kronvall and Persily)
  expect(airChangesFromPermeability(5, 240, 300)).toBeCloseTo(0.2, 12);
});
