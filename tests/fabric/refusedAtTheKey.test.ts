import { describe, expect, test } from 'vitest';
import { readHouse } from '../../src/houseFile.ts';
import { say } from '../../src/words/index.ts';

const problemsOf = (parts: object) => {
  const reading = readHouse(
    JSON.stringify({
      name: 'Invented house',
      location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
      loggers: [{ file: 'inside.csv', place: 'inside' }],
      volumeM3: 240,
      floorAreaM2: 96,
      ...parts,
    }),
  );
  return reading.kind === 'problems' ? reading.problems : [];
};
const wool = { name: 'wool', thicknessMm: 100, conductivityWmK: 0.04 };
const stud = { name: 'stud', widthMm: 45, spacingMm: 600, conductivityWmK: 0.13 };
const layers = (...entries: object[]) => ({
  elements: [{ name: 'W', areaM2: 1, buildUp: { layers: entries } }],
});
const floor = (parts: object) => ({
  elements: [{ name: 'F', areaM2: 50, buildUp: { layers: [wool] }, ...parts }],
});
const layer = 'elements[0].buildUp.layers[0]';

describe('a build-up that cannot be', () => {
  test.each([
    [
      'a layer of no thickness',
      'a number above 0',
      layers({ ...wool, thicknessMm: 0 }),
      `${layer}.thicknessMm`,
    ],
    [
      'a layer of less than none',
      'a number above 0',
      layers({ ...wool, thicknessMm: -100 }),
      `${layer}.thicknessMm`,
    ],
    [
      'a conductivity of 0',
      'a number above 0',
      layers({ ...wool, conductivityWmK: 0 }),
      `${layer}.conductivityWmK`,
    ],
    [
      'a bridged part above 1',
      'a number of at most 1',
      layers({ ...wool, bridge: { name: 's', fraction: 1.2, conductivityWmK: 0.13 } }),
      `${layer}.bridge.fraction`,
    ],
    [
      'a stud wider than its centres',
      'a width no greater than the spacing of 600 mm',
      layers({ ...wool, bridge: { ...stud, widthMm: 610 } }),
      `${layer}.bridge.widthMm`,
    ],
    [
      'more extra timber than there is room',
      'a bridged part of at most 1 in all',
      layers({ ...wool, bridge: { ...stud, extraFraction: 0.95 } }),
      `${layer}.bridge.extraFraction`,
    ],
    [
      'members that continue nothing',
      'a bridged layer further inside whose members go on here',
      layers({ ...wool, bridge: { ...stud, continues: true } }),
      `${layer}.bridge.continues`,
    ],
    [
      'more layers than any wall has',
      'at most 100 layers',
      layers(...Array(101).fill(wool)),
      'elements[0].buildUp.layers',
    ],
    [
      'openings in a solid layer',
      'only in an air layer',
      layers({ ...wool, openingMm2PerM: 500 }),
      `${layer}.openingMm2PerM`,
    ],
    [
      'an emissivity above 1',
      'a number of at most 1',
      layers({ name: 'a', thicknessMm: 25, air: 'unventilated', emissivity: 1.1 }),
      `${layer}.emissivity`,
    ],
    [
      'a void that is colder than outdoors',
      'a number of at most 1',
      { elements: [{ name: 'R', areaM2: 1, uValue: 1, to: 'void', temperatureFactor: 1.2 }] },
      'elements[0].temperatureFactor',
    ],
    [
      'an area of 0',
      'a number above 0',
      { elements: [{ name: 'R', areaM2: 0, uValue: 1 }] },
      'elements[0].areaM2',
    ],
    [
      'a space under a floor that is not on the ground',
      'only in a floor "to": "ground" with its "perimeterM"',
      floor({ underfloor: {} }),
      'elements[0].underfloor',
    ],
    [
      'an edge of a floor without its perimeter',
      'only in a floor "to": "ground" with its "perimeterM"',
      floor({
        to: 'ground',
        edgeInsulation: { lies: 'flat', reachMm: 600, thicknessMm: 50, conductivityWmK: 0.035 },
      }),
      'elements[0].edgeInsulation',
    ],
    [
      'bridges told in two ways',
      'exactly one of psiLengthWK, yValue and junctions',
      { thermalBridges: { yValue: 0.1, psiLengthWK: 3 } },
      'thermalBridges',
    ],
    [
      'a junction without kind or psi',
      'a psiWmK, or a kind with a default',
      { thermalBridges: { junctions: [{ lengthM: 3 }] } },
      'thermalBridges.junctions[0].psiWmK',
    ],
    [
      'a divisor beside stated air changes',
      'only beside airPermeability50',
      { ventilation: { airChangesPerHour: 0.5, divisor: 20 } },
      'ventilation.divisor',
    ],
    [
      'a lower divisor above the divisor',
      'a divisor of at most 20',
      { ventilation: { airPermeability50: 5, divisor: 20, divisorLow: 25 } },
      'ventilation.divisorLow',
    ],
    [
      'a range of a divisor that is not stated',
      'only beside divisor',
      { ventilation: { airPermeability50: 5, divisorHigh: 25 } },
      'ventilation.divisorHigh',
    ],
    [
      'shelter beside a divisor that stands for it',
      'only without divisor, which stands for it',
      { ventilation: { airPermeability50: 5, divisor: 20, shelter: 'exposed' } },
      'ventilation.shelter',
    ],
    [
      'a heat recovery above 1',
      'a number of at most 1',
      { ventilation: { airChangesPerHour: 0.5, heatRecovery: 85 } },
      'ventilation.heatRecovery',
    ],
    [
      'a mass class beside a stated capacity',
      'exactly one of kJPerM2K and class',
      { heatCapacity: { kJPerM2K: 110, class: 'light' } },
      'heatCapacity',
    ],
  ])('%s is refused there: %s', (_, expected, parts, key) => {
    const found = problemsOf(parts).find(({ where }) => where.key === key);
    expect(found && say(found).remedy).toBe(`Give ${expected}.`);
  });
  test.each([
    [
      'layers and a U-value beside them',
      { elements: [{ name: 'W', areaM2: 1, uValue: 0.3, buildUp: { layers: [wool] } }] },
    ],
    [
      'members that go on through a second layer',
      layers({ ...wool, bridge: stud }, { ...wool, bridge: { ...stud, continues: true } }),
    ],
    ['a suspended floor', floor({ to: 'ground', perimeterM: 30, underfloor: {} })],
  ])('but %s are a house', (_, parts) => {
    expect(problemsOf(parts)).toEqual([]);
  });
});
