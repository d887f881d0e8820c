import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findMaterials, materialNamed } from '../../src/fabric/materials/find.ts';
import { layerOf } from '../../src/fabric/materials/layer.ts';
import { materials } from '../../src/fabric/materials/materials.ts';
import { houseSchema, type Layer } from '../../src/house.ts';

const firstNames = (text: string, count = 3) =>
  findMaterials(text)
    .slice(0, count)
    .map((it) => it.name);

describe('the library', () => {
  test('has between 60 and 110 materials, each with a name of its own', () => {
    const names = materials.map((it) => it.name);
    expect(names.length).toBeGreaterThanOrEqual(60);
    expect(names.length).toBeLessThanOrEqual(110);
    expect(new Set(names).size).toBe(names.length);
  });
  test('holds only values that matter can have', () => {
    // PRACTICE: from vacuum panels to copper; from blown insulation to lead; lead has the least specific heat.
    for (const it of materials) {
      if (it.kind !== 'solid') continue;
      const within = (value: number, low: number, high: number) => value >= low && value <= high;
      expect(within(it.conductivity.value, 0.005, 400), `${it.name}: conductivity`).toBe(true);
      expect(within(it.density.value, 5, 12_000), `${it.name}: density`).toBe(true);
      expect(within(it.specificHeat.value, 100, 2500), `${it.name}: specific heat`).toBe(true);
      if (it.vapour.kind === 'factor')
        expect(it.vapour.dry, `${it.name}: dry holds back vapour better`).toBeGreaterThanOrEqual(
          it.vapour.humid,
        );
    }
  });
  test('says of every value how it is known', () => {
    for (const it of materials) {
      const values = it.kind === 'solid' ? [it.conductivity, it.density, it.specificHeat, it.vapour] : [];
      for (const { mark, source } of values) {
        expect(['READ', 'MEMORY', 'PRACTICE']).toContain(mark);
        expect(source.length).toBeGreaterThan(10);
      }
    }
  });
});

describe('searching', () => {
  test.each([
    ['plasterboard', 'gypsum board'],
    ['gypsum board', 'gypsum board'],
    ['OSB', 'OSB'],
    ['rafter', 'softwood'],
    ['loft roll', 'mineral wool quilt'],
    ['polystyrene', 'EPS'],
    ['vcl', 'vapour check'],
    ['cast concrete', 'concrete, dense'],
    ['aac', 'aerated concrete block'],
    ['cork', 'cork board'],
    ['batten space', 'ventilated air space'],
    ['wood fibre', 'wood fibre board'],
  ])('"%s" finds %s first', (text, name) => {
    expect(firstNames(text, 1)).toEqual([name]);
  });
  test('forgives a slip of the finger', () => {
    expect(firstNames('plasterbaord', 1)).toEqual(['gypsum board']);
    expect(firstNames('celulose', 1)).toEqual(['cellulose, blown']);
  });
  test('passes over the thickness that was typed along', () => {
    expect(findMaterials('100mm PIR')).toEqual(findMaterials('PIR'));
    expect(findMaterials('PIR 100 mm')).toEqual(findMaterials('PIR'));
  });
  test('wants every word: "dense concrete" finds no light one', () => {
    expect(firstNames('dense concrete', 20)).not.toContain('concrete, light 1800');
  });
  test('finds nothing in a word that is none', () => {
    expect(findMaterials('xylophone')).toEqual([]);
  });
  test('finds every material by its own name first, and all of them by nothing', () => {
    for (const { name } of materials) expect(firstNames(name, 1)).toEqual([name]);
    expect(findMaterials('  ')).toEqual(materials);
  });
  test('answers whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(findMaterials(text).length).toBeLessThanOrEqual(materials.length);
      }),
    );
  });
  test('a name that is not in the library is a mistake in the call', () => {
    expect(() => materialNamed('unobtainium')).toThrow('no material is called "unobtainium"');
  });
});

describe('a layer made of a material', () => {
  test('is accepted by house.json, whatever the material', () => {
    const elements = materials.map((it) => {
      const layers: Layer[] = [layerOf(it, 25)];
      return { name: it.name, areaM2: 1, buildUp: { layers } };
    });
    const house = {
      name: 'Invented house',
      location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
      loggers: [{ file: 'inside.csv', place: 'inside' }],
      elements,
    };
    expect(houseSchema.safeParse(house).success).toBe(true);
  });
  test('carries heat and vapour figures under the keys of house.json', () => {
    expect(layerOf(materialNamed('OSB'), 11)).toEqual({
      name: 'OSB',
      thicknessMm: 11,
      conductivityWmK: 0.13,
      densityKgM3: 650,
      specificHeatJkgK: 1700,
      vapourResistance: 50,
    });
    expect(layerOf(materialNamed('vapour check'), 0)).toEqual({
      name: 'vapour check',
      resistanceM2KW: 0,
      sdM: 5,
    });
  });
});
