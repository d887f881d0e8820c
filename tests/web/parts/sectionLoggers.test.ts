import { describe, expect, test } from 'vitest';
import type { Logger } from '../../../src/house.ts';
import type { DrawnElement } from '../../../src/sheet/drawing/elementKind.ts';
import { sectionDrawing } from '../../../src/sheet/drawing/sectionDrawing.ts';
import { placeLoggers } from '../../../src/sheet/drawing/sectionLoggers.ts';

const element = (name: string, areaM2: number, to: DrawnElement['to'] = 'outside'): DrawnElement => ({
  name,
  areaM2,
  uValue: 0.2,
  heatLossWK: areaM2 * 0.2,
  to,
  notes: [],
});
const logger = (place: Logger['place'], more: Partial<Logger> = {}): Logger => ({
  file: `${place}.csv`,
  place,
  ...more,
});
const shell = [element('External walls', 120), element('Ground floor', 50, 'ground')];
const drawn = (elements: readonly DrawnElement[], width = 640) => sectionDrawing(elements, [], 60, width);

describe('the logger under the roof', () => {
  test.each([
    ['over a ceiling', 'Ceiling', 640],
    ['over a ceiling, on a phone', 'Ceiling', 328],
    ['under a pitched roof', 'Roof', 640],
    ['under a pitched roof, on a phone', 'Roof', 328],
  ])('%s lies within the triangle with its label', (_, name, width) => {
    const drawing = drawn([...shell, element(name, 60)], width);
    const [{ at, label }] = placeLoggers([logger('void')], drawing);
    expect(label).toBe('under the roof');
    const { attic } = drawing;
    if (attic === null) throw new Error('a roof without a space under it');
    expect(at.y).toBeGreaterThan(attic.top);
    expect(at.y).toBeLessThan(attic.base - 8);
    // At the height of the letters' tops, where the triangle is narrowest for them.
    const half = (attic.span / 2) * ((at.y - 6 - attic.top) / (attic.base - attic.top));
    expect(at.x - 4).toBeGreaterThan(attic.middle - half);
    expect(at.x + 10 + label.length * 6.8).toBeLessThan(attic.middle + half);
  });

  test('is not shown in a house without a roof', () => {
    expect(placeLoggers([logger('void')], drawn(shell))).toEqual([]);
  });
});

test('inside loggers lie in the room, and none runs into the wall with its name', () => {
  const drawing = drawn(shell);
  const rooms = ['Living room', 'Kitchen', 'A bedroom with a very long name indeed'];
  const marks = placeLoggers(
    rooms.map((room) => logger('inside', { room })),
    drawing,
  );
  for (const { at, label } of marks) {
    expect(at.x).toBeGreaterThan(drawing.room.left);
    expect(at.x + 10 + label.length * 6.8).toBeLessThan(drawing.room.right);
    expect(at.y).toBeGreaterThan(drawing.room.top);
    expect(at.y).toBeLessThan(drawing.room.floor);
  }
});

test('a surface logger sits on its element, one of an unknown element nowhere', () => {
  const drawing = drawn(shell);
  const [mark] = placeLoggers([logger('surface', { element: 'Ground floor' })], drawing);
  expect(mark.at.y).toBeGreaterThanOrEqual(drawing.room.floor);
  expect(placeLoggers([logger('surface')], drawing)).toEqual([]);
});
