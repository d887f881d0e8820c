import { expect, test } from 'vitest';
import { type DrawnElement, kindOf } from '../../../src/sheet/drawing/elementKind.ts';
import { type Strip, sectionDrawing } from '../../../src/sheet/drawing/sectionDrawing.ts';

const element = (
  name: string,
  areaM2: number,
  uValue: number,
  to: DrawnElement['to'] = 'outside',
): DrawnElement & { readonly heatLossWK: number } => ({
  name,
  areaM2,
  uValue,
  heatLossWK: areaM2 * uValue,
  to,
  notes: [],
});

const walls = element('External walls', 120, 0.25);
const windows = element('Windows', 15, 1.2);
const roof = element('Roof', 60, 0.15);
const floor = element('Ground floor', 50, 0.14, 'ground');
const elements = [walls, windows, roof, floor];
const loss = 90;

const thicknessOf = ({ corners: [, b, c] }: Strip) => Math.hypot(c.x - b.x, c.y - b.y);
const lengthOf = ({ corners: [a, b] }: Strip) => Math.hypot(b.x - a.x, b.y - a.y);
const ofName = (name: string, width = 640) =>
  sectionDrawing(elements, [], loss, width).strips.filter((strip) => strip.name === name);

test('an element’s lines together are as thick as the heat that it loses', () => {
  const perLoss = thicknessOf(ofName('Windows')[0]) / windows.heatLossWK;
  const [slope, otherSlope] = ofName('Roof');
  expect((thicknessOf(slope) + thicknessOf(otherSlope)) / roof.heatLossWK).toBeCloseTo(perLoss, 9);
  expect(thicknessOf(ofName('Ground floor')[0]) / floor.heatLossWK).toBeCloseTo(perLoss, 9);
  // The main wall stands left and right and shares its thickness.
  expect((2 * thicknessOf(ofName('External walls')[0])) / walls.heatLossWK).toBeCloseTo(perLoss, 9);
});

test('walls and windows are as long as their areas', () => {
  const wall = ofName('External walls').reduce((sum, strip) => sum + lengthOf(strip), 0);
  expect(wall / lengthOf(ofName('Windows')[0])).toBeCloseTo(walls.areaM2 / windows.areaM2, 9);
});

test.each([
  [320, 20],
  [640, 44],
])('at %i px everything stays on the sheet and words do not overlap', (width, apart) => {
  const { strips, words, height } = sectionDrawing(elements, [], loss, width);
  for (const { x, y } of strips.flatMap(({ corners }) => corners)) {
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x).toBeLessThanOrEqual(width);
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y).toBeLessThanOrEqual(height);
  }
  for (const side of ['left', 'right']) {
    const tops = words.filter((it) => it.side === side).map(({ at }) => at.y);
    for (let i = 1; i < tops.length; i++) expect(tops[i] - tops[i - 1]).toBeGreaterThanOrEqual(apart);
  }
  expect(words.map(({ name }) => name).toSorted()).toEqual(elements.map(({ name }) => name).toSorted());
});

test('shares are of the whole designed loss', () => {
  const { words } = sectionDrawing(elements, [], loss, 640);
  expect(words.find(({ name }) => name === 'External walls')?.share).toBe('33 %');
});

test('a house of one element is drawn too', () => {
  expect(sectionDrawing([roof], [], 9, 360).strips.length).toBe(2);
  expect(sectionDrawing([windows], [], 18, 360).strips.length).toBe(1);
});

test.each([
  ['Slab', 'ground', {}, 'floor'],
  ['Bathroom window', 'outside', {}, 'opening'],
  ['South glass', 'outside', { gValue: 0.5 }, 'opening'],
  ['Loft floor', 'void', {}, 'ceiling'],
  ['Floor over the crawl space', 'void', {}, 'floor'],
  ['Ceiling', 'outside', { facing: 'up' }, 'ceiling'],
  ['Over the kitchen', 'outside', { facing: 'up' }, 'roof'],
  ['To the old house', 'adjacent', {}, 'neighbour'],
  ['North', 'outside', {}, 'wall'],
] as const)(
  '“%s” to %s is taken as expected',
  (name, to, { facing, gValue }: { facing?: 'up'; gValue?: number }, kind) => {
    const designed = {
      name,
      areaM2: 10,
      ...(gValue === undefined ? {} : { gValue }),
      ...(facing === undefined ? {} : { buildUp: { facing, layers: [] } }),
    };
    expect(kindOf(element(name, 10, 0.2, to), designed)).toBe(kind);
  },
);

test('a house without a roof in its design has no empty place for one', () => {
  const { room, attic } = sectionDrawing([walls, floor], [], loss, 640);
  expect(attic).toBeNull();
  expect(room.top).toBeLessThan(sectionDrawing(elements, [], loss, 640).room.top);
});

test('a name too long for its lines is cut with a mark that it goes on', () => {
  const long = element('Sloping roof over the northern extension', 20, 0.15);
  const { words } = sectionDrawing([...elements, long], [], loss, 640);
  const lines = words.find(({ name }) => name === long.name)?.lines ?? [];
  expect(lines).toHaveLength(2);
  expect(lines[1]).toMatch(/…$/);
});

test('sixteen elements have words that do not overlap', () => {
  const many = [
    ...elements,
    ...Array.from({ length: 12 }, (_, i) => element(`Window number ${i + 1}`, 2, 1.3)),
  ];
  const { words } = sectionDrawing(many, [], loss, 640);
  for (const side of ['left', 'right']) {
    const own = words.filter((it) => it.side === side);
    for (let i = 1; i < own.length; i++)
      // Each line of a name and its share take 15 px.
      expect(own[i].at.y - own[i - 1].at.y).toBeGreaterThanOrEqual((own[i - 1].lines.length + 1) * 15 - 2);
  }
});
