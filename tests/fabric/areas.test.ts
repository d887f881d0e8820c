/** Areas and volumes that do not add up are questioned; those of ordinary houses are not. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doubtsAboutAreas } from '../../src/fabric/areas.ts';
import { elementDesign } from '../../src/fabric/element.ts';
import type { House } from '../../src/house.ts';
import { readHouse } from '../../src/houseFile.ts';
import { invented } from './inventedHouse.ts';

const doubts = (house: House) => doubtsAboutAreas(house, (house.elements ?? []).map(elementDesign));
const wool = { name: 'wool', thicknessMm: 150, conductivityWmK: 0.04 };
const of = (name: string, areaM2: number, facing: string, rest: object = {}) => ({
  name,
  areaM2,
  buildUp: { facing, layers: [wool] },
  ...rest,
});
const glass = (areaM2: number, rest: object = {}) => ({
  name: 'Windows',
  areaM2,
  uValue: 1.2,
  gValue: 0.5,
  ...rest,
});

interface Box {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly storeys: number;
  readonly glazed: number;
  readonly pitch: number;
}

/** A house of right angles, half of its walls glass at most, under a roof of some pitch, or under a ceiling to a loft. */
function house({ length, width, height, storeys, glazed, pitch }: Box, attached: number, loft: boolean) {
  const plan = length * width;
  const sides = 2 * (length + width) * height * storeys;
  const party = Math.min(attached, 2) * width * height * storeys;
  const windows = glazed * (sides - party);
  return {
    floorAreaM2: plan * storeys * 0.92,
    volumeM3: plan * height * storeys,
    elements: [
      of('Walls', sides - party - windows, 'across'),
      loft
        ? of('Ceiling', plan, 'up', { to: 'void' })
        : of('Roof', plan / Math.cos((pitch * Math.PI) / 180), 'up'),
      of('Floor', plan, 'down', { to: 'ground', perimeterM: 2 * (length + width) - attached * width }),
      ...(party > 0 ? [of('Party walls', party, 'across', { to: 'adjacent' })] : []),
      glass(windows),
    ],
  };
}

const boxes: fc.Arbitrary<Box> = fc.record({
  length: fc.double({ min: 4, max: 22, noNaN: true }),
  width: fc.double({ min: 3, max: 14, noNaN: true }),
  height: fc.double({ min: 2.2, max: 3.6, noNaN: true }),
  storeys: fc.integer({ min: 1, max: 4 }),
  glazed: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
  pitch: fc.double({ min: 0, max: 60, noNaN: true }),
});

/** Under slopes 7 m wide; only what has 1.5 m above it counts as floor. */
const lofts = fc
  .record({
    length: fc.double({ min: 4, max: 12, noNaN: true }),
    pitch: fc.double({ min: 35, max: 60, noNaN: true }),
  })
  .map(({ length, pitch }) => {
    const [width, angle] = [7, (pitch * Math.PI) / 180];
    const rise = (width / 2) * Math.tan(angle);
    return {
      floorAreaM2: length * (width - (2 * 1.5) / Math.tan(angle)),
      volumeM3: (length * width * rise) / 2,
      elements: [
        of('Slopes', (length * width) / Math.cos(angle) - 4, 'up'),
        of('Gables', width * rise, 'across'),
        glass(4, { tiltDeg: pitch }),
        of('Floor', length * width, 'down', { to: 'adjacent' }),
      ],
    };
  });

describe('nothing is questioned', () => {
  test('in the demonstration house', () => {
    const reading = readHouse(readFileSync(new URL('../../sample-logs/house.json', import.meta.url), 'utf8'));
    if (reading.kind === 'problems') throw new Error('the demonstration house is valid');
    expect(doubts(reading.house)).toEqual([]);
  });
  test('in detached, semi-detached and terraced houses of any size', () => {
    fc.assert(
      fc.property(boxes, fc.integer({ min: 0, max: 2 }), fc.boolean(), (box, attached, loft) => {
        expect(doubts(invented(house(box, attached, loft)))).toEqual([]);
      }),
    );
  });
  test('in an extension that is open to the house, or has its wall to it listed', () => {
    const size = {
      length: fc.double({ min: 3, max: 9, noNaN: true }),
      width: fc.double({ min: 2, max: 6, noNaN: true }),
    };
    fc.assert(
      fc.property(fc.record(size), fc.boolean(), ({ length, width }, open) => {
        const sides = (length + 2 * width) * 2.5;
        const extension = {
          floorAreaM2: length * width,
          volumeM3: length * width * 2.5,
          elements: [
            of('Walls', sides * 0.5, 'across'),
            glass(sides * 0.5),
            of('Flat roof', length * width, 'up'),
            of('Slab', length * width, 'down', { to: 'ground', perimeterM: length + 2 * width }),
            ...(open ? [] : [of('To the house', length * 2.5, 'across', { to: 'adjacent' })]),
          ],
        };
        expect(doubts(invented(extension))).toEqual([]);
      }),
    );
  });
  test('in a loft over heated rooms with its floor listed', () => {
    fc.assert(
      fc.property(lofts, (loft) => {
        expect(doubts(invented(loft))).toEqual([]);
      }),
    );
  });
});

describe('questioned is', () => {
  const usual = { length: 8, width: 6, height: 2.5, storeys: 2, glazed: 0.15, pitch: 0 };
  const whole = house(usual, 0, true);
  test('a volume that its elements cannot enclose in any shape', () => {
    // COMPUTED by hand: a sphere of 2400 m³ has (36π)^(1/3)·2400^(2/3) = 4.835976·179.2563 = 866.88 m²;
    // the house has 2·14·5 + 48 + 48 = 236 m²
    const [first] = doubts(invented({ ...whole, floorAreaM2: 900, volumeM3: 2400 }));
    expect(first).toMatchObject({
      code: 'shell-too-small',
      area: expect.closeTo(236, 9),
      least: expect.closeTo(866.88, 1),
      volume: 2400,
    });
  });
  test.each([
    ['a shell far too large for its volume', 'shell-too-large', { ...whole, volumeM3: 24, floorAreaM2: 12 }],
    ['a volume with a digit missing', 'height-doubtful', { ...whole, volumeM3: 24 }],
    ['a floor area a tenth of itself', 'height-doubtful', { ...whole, floorAreaM2: 9 }],
    ['a slab larger than all floors together', 'ground-floor-too-large', { ...whole, floorAreaM2: 30 }],
    [
      'a roof that even with all windows covers three quarters of the floor at most',
      'roof-smaller-than-floor',
      {
        ...whole,
        elements: whole.elements.map((it) => (it.name === 'Ceiling' ? { ...it, areaM2: 14 } : it)),
      },
    ],
    [
      'a window area larger than all that is not glass',
      'mostly-glass',
      {
        ...whole,
        elements: whole.elements.map((it) => (it.name === 'Windows' ? { ...it, areaM2: 300 } : it)),
      },
    ],
    [
      'a perimeter in millimetres',
      'perimeter-doubtful',
      {
        ...whole,
        elements: whole.elements.map((it) => (it.name === 'Floor' ? { ...it, perimeterM: 28_000 } : it)),
      },
    ],
  ])('%s', (_, code, parts) => {
    expect(doubts(invented(parts)).map((it) => it.code)).toContain(code);
  });
  test('whether an element is missing, and nothing else, in a loft whose floor to heated rooms is not listed', () => {
    fc.assert(
      fc.property(lofts, (loft) => {
        const elements = loft.elements.filter((it) => it.name !== 'Floor');
        const codes = doubts(invented({ ...loft, elements })).map((it) => it.code);
        expect(['', 'shell-too-small']).toContain(codes.join());
      }),
    );
  });
  test('nothing of a roof where an element does not say which way it faces', () => {
    const elements = [
      of('Roof', 10, 'up'),
      of('Floor', 48, 'down', { to: 'ground' }),
      { name: 'Sloping ceiling', areaM2: 45, uValue: 0.2 },
    ];
    expect(doubts(invented({ elements }))).toEqual([]);
  });
});
