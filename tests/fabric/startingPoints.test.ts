import { describe, expect, test } from 'vitest';
import { designOf } from '../../src/fabric/index.ts';
import { exampleClimates } from '../../src/fabric/moisture/climate.ts';
import { moistureOf } from '../../src/fabric/moisture/moisture.ts';
import { startingPoints } from '../../src/fabric/startingPoints/startingPoints.ts';
import { houseSchema } from '../../src/house.ts';

const areaM2 = 50;
/** An invented house of this element alone; a ground floor has 30 m of outside edge. */
const design = ({ element }: (typeof startingPoints)[number]) => {
  const perimeter = element.to === 'ground' ? { perimeterM: 30 } : {};
  const house = houseSchema.parse({
    name: 'Invented house',
    location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
    loggers: [{ file: 'inside.csv', place: 'inside' }],
    elements: [{ ...element, ...perimeter, areaM2 }],
  });
  const [made] = designOf(house)?.elements ?? [];
  return made;
};

describe('the U-value of a starting point lies where such elements usually lie', () => {
  // PRACTICE throughout: ranges as tables of typical U-values have them. The empty cavity and the bare brick
  // wall: MEMORY, RdSAP default tables, 1.5 to 1.6 and 2.1 (older) or 1.7 (from 2012 measurements).
  test.each([
    ['Pitched roof, insulated between and under the rafters', 0.14, 0.2],
    ['Pitched roof, full of mineral wool', 0.18, 0.24],
    ['Pitched roof, insulated over the rafters', 0.15, 0.2],
    ['Flat roof, insulated over the deck', 0.14, 0.18],
    ['Ceiling under a cold loft', 0.12, 0.17],
    ['Cavity wall, cavity full of wool', 0.23, 0.3],
    ['Cavity wall, empty', 1.3, 1.7],
    ['Timber-frame wall', 0.25, 0.33],
    ['Old brick wall, bare', 1.7, 2.2],
    ['Solid wall, insulated outside', 0.24, 0.32],
    ['Solid wall, insulated inside', 0.45, 0.6],
    ['Partition of studs', 0.4, 0.55],
    ['Slab on the ground, insulated', 0.13, 0.2],
    ['Suspended timber floor, insulated between joists', 0.18, 0.25],
    ['Window, double glazing', 1.2, 1.6],
    ['Window, triple glazing', 0.7, 1.1],
    ['Outside door', 1.0, 1.8],
  ])('%s: %d to %d', (name, low, high) => {
    const point = startingPoints.find((it) => it.name === name);
    if (point === undefined) throw new Error(`no starting point "${name}"`);
    const { transmittance } = design(point);
    expect(transmittance).toBeGreaterThanOrEqual(low);
    expect(transmittance).toBeLessThanOrEqual(high);
  });
  test('and each of them has a range here', () => {
    expect(startingPoints).toHaveLength(17);
  });
});

test('every starting point with layers says enough for the moisture calculation', () => {
  for (const { name, element } of startingPoints) {
    if (element.buildUp === undefined) continue;
    const beyond = element.to === 'ground' ? 'void' : element.to;
    const inside = { kind: 'class', humidityClass: 2, temperature: 20 } as const;
    const result = moistureOf(element.buildUp, exampleClimates[0], inside, beyond);
    expect(result.calculated, name).toBe(true);
  }
});

test('names are told apart, and each is said in a sentence', () => {
  expect(new Set(startingPoints.map((it) => it.name)).size).toBe(startingPoints.length);
  for (const { about } of startingPoints) expect(about).toMatch(/^[A-Z].*\.$/);
});
