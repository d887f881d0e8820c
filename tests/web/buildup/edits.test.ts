import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { designOf, findMaterials, materialNamed, startingPoints } from '../../../src/fabric/index.ts';
import type { House } from '../../../src/house.ts';
import {
  addEmpty,
  addFrom,
  addWithUValue,
  changeElement,
  changeNeighbour,
  duplicateElement,
  elementAt,
  putBeyond,
  removeElement,
  renameElement,
} from '../../../web/buildup/elementEdits.ts';
import { begin, edited, undone } from '../../../web/buildup/history.ts';
import {
  changeBridge,
  changeLayer,
  duplicateLayer,
  giveLayers,
  insertLayer,
  type LayerPlace,
  layerAt,
  measureTimbers,
  moveLayer,
  putMaterial,
  putTimbers,
  removeLayer,
  resistBy,
  takeTimbersOut,
} from '../../../web/buildup/layerEdits.ts';
import { type Edit, tried } from '../../../web/buildup/tried.ts';

const text = readFileSync(new URL('../../../sample-logs/house.json', import.meta.url), 'utf8');
const sample = (): House => JSON.parse(text);
const layer = (part: number, at: number): LayerPlace => ({ of: 'elements', part, layer: at });
const walls = layer(0, 2);
const joists = layer(1, 1);
const windows = 2;

function after(edit: Edit, house = sample()): House {
  const outcome = tried(house, edit);
  if (outcome.kind === 'refused') throw new Error(outcome.reasons.join(' '));
  return outcome.house;
}
const refusal = (edit: Edit) => {
  const outcome = tried(sample(), edit);
  return outcome.kind === 'refused' ? outcome.reasons.join(' ') : 'taken';
};
const layerNames = ({ elements }: House, at: number) =>
  elements?.[at].buildUp?.layers.map(({ name }) => name);

describe('an edit', () => {
  test('leaves every key that it is not about as it was, in its order', () => {
    const changed = after((house) => changeLayer(house, walls, { thicknessMm: 150 }));
    const other = JSON.stringify(changed, null, 2).replace('"thicknessMm": 150', '"thicknessMm": 140');
    // The stone slab is 150 mm thick as well, but stands after the walls.
    expect(other).toBe(JSON.stringify(sample(), null, 2));
  });

  test('that empties a field leaves its key out', () => {
    const changed = after((house) => changeLayer(house, walls, { densityKgM3: undefined }));
    expect(layerAt(changed, walls)).not.toHaveProperty('densityKgM3');
  });

  test('is refused with the reason, and the house stays as it was', () => {
    const house = sample();
    const outcome = tried(house, (copy) => changeLayer(copy, walls, { thicknessMm: 0 }));
    expect(outcome).toEqual({ kind: 'refused', reasons: ['Found 0. Give a number above 0.'] });
    expect(house).toEqual(sample());
  });

  test.each<[string, Edit, RegExp]>([
    ['conductivity 0', (house) => changeLayer(house, walls, { conductivityWmK: 0 }), /above 0/],
    [
      'a timber wider than its centres',
      (house) => changeBridge(house, joists, { widthMm: 700 }),
      /no greater than/,
    ],
    [
      'a share of timber above 1',
      (house) => changeBridge(house, joists, { extraFraction: 0.99 }),
      /at most 1/,
    ],
    ['no area', (house) => changeElement(house, 0, { areaM2: undefined }), /missing/],
    ['a name that another element has', (house) => renameElement(house, 0, 'Ceiling'), /no other element/],
    [
      'taking out the only layer',
      (house) => {
        for (const _ of [1, 2, 3, 4]) removeLayer(house, layer(0, 0));
      },
      /at least 1 entry/,
    ],
  ])('is refused: %s', (_, edit, reason) => {
    expect(refusal(edit)).toMatch(reason);
  });
});

describe('an element', () => {
  test.each(startingPoints.map((point) => [point.name, point] as const))(
    'from “%s” has a U-value at once',
    (_, point) => {
      const house = after((copy) => addFrom(copy, point));
      expect(designOf(house)?.elements.at(-1)?.transmittance).toBeGreaterThan(0);
    },
  );

  test('is added by its U-value alone, or with a single board', () => {
    expect(after(addWithUValue).elements?.at(-1)).toMatchObject({ uValue: 1 });
    expect(after(addEmpty).elements?.at(-1)?.buildUp?.layers).toHaveLength(1);
  });

  test('is added to a house that has none', () => {
    const { elements: _, ...bare } = sample();
    bare.loggers = bare.loggers.map(({ element: __, ...logger }) => logger);
    expect(after(addWithUValue, bare).elements).toHaveLength(1);
  });

  test('that is added or duplicated gets a name of its own', () => {
    const twice = after((house) => {
      duplicateElement(house, 1);
      duplicateElement(house, 1);
    });
    expect(twice.elements?.slice(1, 4).map(({ name }) => name)).toEqual([
      'Ceiling',
      'Ceiling 3',
      'Ceiling 2',
    ]);
  });

  test('that is renamed keeps its logger', () => {
    const house = after((copy) => renameElement(copy, 1, 'Loft'));
    expect(house.loggers.filter(({ element }) => element === 'Loft')).toHaveLength(1);
  });

  test('that no longer lies against an unheated space loses as much as outdoors takes', () => {
    const shared = after((house) => changeElement(house, 0, { to: 'void', temperatureFactor: 0.5 }));
    const outdoors = after((house) => putBeyond(house, 0, 'outside'), shared);
    expect(elementAt(outdoors, 0)).not.toHaveProperty('temperatureFactor');
    expect(designOf(outdoors)?.elements[0].heatLoss).toBe(designOf(sample())?.elements[0].heatLoss);
  });

  test('to a heated neighbour says how warm it is there, until that is emptied', () => {
    const known = after((house) => changeNeighbour(house, { temperatureC: 18 }));
    expect(known.conditions?.neighbour).toEqual({ temperatureC: 18 });
    const wide = after((house) => changeNeighbour(house, { plusMinusK: 2 }), known);
    expect(wide.conditions?.neighbour).toEqual({ temperatureC: 18, plusMinusK: 2 });
    const none = after((house) => changeNeighbour(house, { temperatureC: undefined }), wide);
    expect(none.conditions?.neighbour).toBeUndefined();
  });

  test('that is removed leaves its logger without one', () => {
    const house = after((copy) => removeElement(copy, 1));
    expect(house.loggers.some((logger) => 'element' in logger)).toBe(false);
    expect(house.elements?.map(({ name }) => name)).not.toContain('Ceiling');
  });

  test('known by its U-value gets layers, which then count', () => {
    const house = after((copy) => giveLayers(copy, windows));
    expect(elementAt(house, windows)).not.toHaveProperty('uValue');
    expect(designOf(house)?.elements[windows].transmission).not.toBeNull();
  });
});

test('a U-value given beside layers that are refused stands for them', () => {
  const metal = after((house) => changeBridge(house, joists, { conductivityWmK: 50 }));
  expect(designOf(metal)?.heatLoss).toBeNull();
  const stated = after((house) => changeElement(house, 1, { uValue: 0.3 }), metal);
  expect(designOf(stated)?.elements[1].transmittance).toBe(0.3);
});

describe('a layer', () => {
  test('goes further in and further out, and stays at the ends', () => {
    const [first, second] = layerNames(sample(), 0) ?? [];
    const further = after((house) => moveLayer(house, layer(0, 0), 1));
    expect(layerNames(further, 0)?.slice(0, 2)).toEqual([second, first]);
    expect(after((house) => moveLayer(house, layer(0, 0), -1))).toEqual(sample());
  });

  test('is duplicated and added outside of another', () => {
    expect(
      layerNames(
        after((house) => duplicateLayer(house, walls)),
        0,
      )?.slice(2, 4),
    ).toEqual(['Mineral wool', 'Mineral wool']);
    expect(
      layerNames(
        after((house) => insertLayer(house, walls)),
        0,
      )?.[3],
    ).toBe('gypsum board');
  });

  test('of another material keeps its thickness and its timbers', () => {
    const house = after((copy) => putMaterial(copy, joists, materialNamed('mineral wool quilt')));
    expect(layerAt(house, joists)).toMatchObject({
      name: 'mineral wool quilt',
      thicknessMm: 100,
      bridge: { name: 'Joists' },
    });
  });

  test('takes every material of the library', () => {
    for (const material of findMaterials(''))
      expect(
        refusal((house) => putMaterial(house, joists, material)),
        material.name,
      ).toBe('taken');
  });

  test('by a stated resistance resists as it did by its conductivity', () => {
    const before = designOf(sample())?.elements[0].transmittance ?? 0;
    const there = after((house) => resistBy(house, walls, 'resistance'));
    const back = after((house) => resistBy(house, walls, 'conductivity'), there);
    // The resistance, 0.140/0.035, has four figures at most: nothing is rounded.
    expect(designOf(there)?.elements[0].transmittance).toBeCloseTo(before, 12);
    expect(designOf(back)?.elements[0].transmittance).toBeCloseTo(before, 12);
  });

  test.each(['conductivity', 'resistance', 'unventilated', 'slightly', 'ventilated'] as const)(
    'may resist in every way: %s',
    (way) => {
      expect(refusal((house) => resistBy(house, joists, way))).toBe('taken');
      expect(refusal((house) => resistBy(house, layer(1, 3), way))).toBe('taken');
    },
  );

  test('gets timbers and loses them', () => {
    const house = after((copy) => putTimbers(copy, walls));
    expect(layerAt(house, walls).bridge).toMatchObject({
      widthMm: 47,
      spacingMm: 450,
      conductivityWmK: 0.13,
    });
    expect(after((copy) => takeTimbersOut(copy, walls), house)).toEqual(sample());
  });

  describe('whose members go on through the next layer', () => {
    // Battens, then studs in two layers that cross them.
    const wall = layer(0, 0);
    const bridge = (name: string, continues?: true) => ({
      ...{ name, fraction: 0.1, conductivityWmK: 0.13 },
      ...(continues ? { continues } : {}),
    });
    const crossed = () => {
      const house = sample();
      const wool = (name: string, it: ReturnType<typeof bridge>) => ({
        ...{ name, thicknessMm: 50, conductivityWmK: 0.035 },
        bridge: it,
      });
      elementAt(house, 0).buildUp = {
        layers: [
          wool('a', bridge('battens')),
          wool('b', bridge('studs')),
          wool('c', bridge('studs on', true)),
          { name: 'board', thicknessMm: 12, conductivityWmK: 0.13 },
        ],
      };
      return house;
    };
    const onOf = (house: House) =>
      elementAt(house, 0).buildUp?.layers.map((it) => it.bridge?.continues ?? false);
    const well = (house: House, it: LayerPlace) => resistBy(house, it, 'ventilated');
    test.each([
      ['are taken out', takeTimbersOut],
      ['are aired away', well],
    ])('leaves these to begin there when its own %s', (_, edit) => {
      expect(onOf(after((house) => edit(house, layer(0, 1)), crossed()))).toEqual([
        ...[false, false, false, false],
      ]);
    });
    test('leaves these to begin there when it is removed', () => {
      expect(onOf(after((house) => removeLayer(house, layer(0, 1)), crossed()))).toEqual([
        false,
        false,
        false,
      ]);
      expect(onOf(after((house) => removeLayer(house, wall), crossed()))).toEqual([false, true, false]);
    });
    test('changes places with it, and the inner of both begins them', () => {
      const moved = after((house) => moveLayer(house, layer(0, 2), -1), crossed());
      expect(layerNames(moved, 0)).toEqual(['a', 'c', 'b', 'board']);
      expect(onOf(moved)).toEqual([false, false, true, false]);
    });
  });

  test('has the same U-value whether its timbers are given by centres or by their share', () => {
    const before = designOf(sample())?.elements[1].transmittance ?? 0;
    const house = after((copy) => measureTimbers(copy, joists, 'share'));
    // 47/600 is rounded to four figures: 1 in 10 000 of the share, less than that of the U-value.
    expect(Math.abs((designOf(house)?.elements[1].transmittance ?? 0) / before - 1)).toBeLessThan(1e-4);
    expect(
      refusal((copy) => {
        measureTimbers(copy, joists, 'share');
        measureTimbers(copy, joists, 'centres');
      }),
    ).toBe('taken');
  });
});

test('any edit of the design, taken or refused, is gone after undo', () => {
  const at = fc.record<LayerPlace>({
    of: fc.constant('elements'),
    part: fc.constantFrom(0, 1, 7),
    layer: fc.constantFrom(0, 1, 2),
  });
  // Hundredths of a millimetre: what a person may type.
  const length = fc.integer({ min: -1000, max: 50_000 }).map((it) => it / 100);
  const edit = fc.oneof(
    fc.tuple(at, length).map(
      ([place, it]): Edit =>
        (house) =>
          changeLayer(house, place, { thicknessMm: it }),
    ),
    fc.tuple(at, length).map(
      ([place, it]): Edit =>
        (house) =>
          changeBridge(house, place, { widthMm: it }),
    ),
    at.map(
      (place): Edit =>
        (house) =>
          moveLayer(house, place, 1),
    ),
    at.map(
      (place): Edit =>
        (house) =>
          removeLayer(house, place),
    ),
    at.map(
      (place): Edit =>
        (house) =>
          duplicateLayer(house, place),
    ),
    at.map(
      ({ part }): Edit =>
        (house) =>
          removeElement(house, part),
    ),
    fc.tuple(at, fc.string()).map(
      ([{ part }, name]): Edit =>
        (house) =>
          renameElement(house, part, name),
    ),
    fc.constantFrom(...startingPoints).map(
      (point): Edit =>
        (house) =>
          addFrom(house, point),
    ),
  );
  fc.assert(
    fc.property(edit, (it) => {
      const history = begin(sample());
      const outcome = tried(history.present, it);
      const next = outcome.kind === 'taken' ? edited(history, outcome.house, null) : history;
      expect(undone(next).present).toEqual(sample());
      expect(() => designOf(next.present)).not.toThrow();
    }),
  );
});
