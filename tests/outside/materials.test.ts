/**
 * The library against tables of design values. READ: the figure stands in the source named (second-hand where
 * said); MEMORY: known, not seen this time.
 */
import { expect, test } from 'vitest';
import { materialNamed } from '../../src/fabric/materials/find.ts';
import type { Mark } from '../../src/fabric/materials/value.ts';

const rows: readonly [
  name: string,
  conductivity: number,
  density: number,
  specificHeat: number,
  mark: Mark,
][] = [
  // READ λ and ρ: ISO 10456:2007 table; c MEMORY
  ['concrete, light 1800', 1.15, 1800, 1000, 'READ'],
  ['concrete, medium 2000', 1.35, 2000, 1000, 'READ'],
  ['concrete, medium 2200', 1.65, 2200, 1000, 'READ'],
  ['concrete, dense', 2.0, 2400, 1000, 'READ'],
  ['reinforced concrete, 1 % steel', 2.3, 2300, 1000, 'READ'],
  ['reinforced concrete, 2 % steel', 2.5, 2400, 1000, 'READ'],
  ['asphalt', 0.7, 2100, 1000, 'READ'],
  ['bitumen felt', 0.23, 1100, 1000, 'READ'],
  // READ: ISO 10077-2 / prEN 12524 table
  ['softwood', 0.13, 500, 1600, 'READ'],
  ['hardwood', 0.18, 700, 1600, 'READ'],
  ['glass', 1.0, 2500, 750, 'READ'],
  // READ: CIBSE Guide A, Table 3.37
  ['PIR board, generic old value', 0.03, 45, 1470, 'READ'],
  ['PUR board, generic old value', 0.028, 30, 1470, 'READ'],
  // MEMORY: ISO 10456
  ['gypsum board', 0.25, 900, 1000, 'MEMORY'],
  ['gypsum board, light', 0.21, 700, 1000, 'MEMORY'],
  ['OSB', 0.13, 650, 1700, 'MEMORY'],
  ['plywood, light', 0.13, 500, 1600, 'MEMORY'],
  ['plywood', 0.17, 700, 1600, 'MEMORY'],
  ['EPS', 0.04, 15, 1450, 'MEMORY'],
  ['clay roof tile', 1.0, 2000, 800, 'MEMORY'],
  ['concrete roof tile', 1.5, 2100, 1000, 'MEMORY'],
  // MEMORY: BR 443, CIBSE Guide A, Approved Document L 2002
  ['mineral wool batt', 0.038, 25, 1030, 'MEMORY'],
  ['mineral wool quilt', 0.042, 12, 1030, 'MEMORY'],
  ['brick, outer leaf', 0.77, 1700, 800, 'MEMORY'],
  ['brick, inner leaf', 0.56, 1700, 800, 'MEMORY'],
  ['dense concrete block', 1.13, 1800, 1000, 'MEMORY'],
  ['lightweight aggregate block', 0.57, 1400, 1000, 'MEMORY'],
  ['aerated concrete block', 0.18, 600, 1000, 'MEMORY'],
  // MEMORY: the two differ a lot, so both are there
  ['cement screed', 1.15, 1800, 1000, 'MEMORY'],
  ['cement screed, light old value', 0.41, 1200, 840, 'MEMORY'],
];

test.each(rows)('%s: %d W/(mK), %d kg/m³, %d J/(kgK), as the table has it', (...row) => {
  const [name, conductivity, density, specificHeat, mark] = row;
  expect(materialNamed(name)).toMatchObject({
    conductivity: { value: conductivity, mark },
    density: { value: density, mark },
    specificHeat: { value: specificHeat },
  });
});
