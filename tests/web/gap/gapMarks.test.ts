import { describe, expect, test } from 'vitest';
import type { Estimate } from '../../../src/assessment.ts';
import {
  drawnApart,
  drawnBeside,
  elementMarks,
  roomMarks,
  surfaceMarks,
  testMarks,
  wayMarks,
  wholeHouseMarks,
} from '../../../web/gap/gapMarks.ts';

const of = (low: number, value: number, high: number): Estimate => ({ value, low, high });
const ranges = {
  heatLossWK: of(105, 119, 133),
  heatLossAsTestedWK: of(93, 103, 113),
  fabricWK: of(63, 68, 74),
  bridgesWK: of(7, 11, 15),
  ventilationWK: of(28, 40, 51),
  elementsWK: [],
};
const design = { heatLossWK: 119, heatLossAsTestedWK: 103, fabricWK: 68, bridgesWK: 11, ranges };

describe('the whole house', () => {
  test('is set beside the drawing with vents shut where that is given, else beside the drawing in use', () => {
    expect(drawnBeside(design)).toMatchObject({ value: 103, range: of(93, 103, 113) });
    expect(drawnBeside({ ...design, heatLossAsTestedWK: null })).toMatchObject({ value: 119 });
  });

  test('stands on the rule as a pencil mark, what the drawing says and what it allows as notches', () => {
    const stage = { heatLossWK: { ...of(99, 113, 130), method: 'network' as const } };
    const marks = wholeHouseMarks(stage, design, 0.15);
    expect(marks.map(({ label, kind }) => [label, kind])).toEqual([
      ['Measured', 'measured'],
      ['As drawn, vents shut', 'drawn'],
      ['Range as drawn', 'other'],
      ['With 15 % allowance', 'drawn'],
    ]);
    expect(marks[3].value).toBeCloseTo(118.45); // COMPUTED: 103 times 1.15
  });

  test('parts into shell and air so that both make up what it is set beside', () => {
    expect(drawnApart(design)).toEqual({ shell: 79, air: 24 });
  });
});

describe('an element', () => {
  const element = {
    name: 'Walls',
    uValueDrawn: 0.2,
    uValueAlone: of(0.1, 0.3, 0.5),
    uValueEvenly: null,
    couldExplainPercent: [],
    notes: [],
  };

  test('has a hollow mark for each way to hold the gap, and none for one that it cannot', () => {
    expect(elementMarks(element).map(({ label, kind }) => [label, kind])).toEqual([
      ['As drawn', 'drawn'],
      ['It alone', 'other'],
    ]);
    expect(elementMarks({ ...element, uValueAlone: null })).toHaveLength(1);
  });

  test('measured by a surface logger is a pencil mark only where the average method accepts it', () => {
    const surface = {
      logger: 'wall.csv',
      room: 'Hall',
      element: 'Walls',
      uValueWM2K: of(0.2, 0.3, 0.4),
      accepted: true,
      designUValue: 0.2,
      notes: [],
    };
    expect(surfaceMarks(surface)[0].kind).toBe('measured');
    expect(surfaceMarks({ ...surface, accepted: false })[0].kind).toBe('other');
    expect(surfaceMarks({ ...surface, uValueWM2K: null, designUValue: null })).toEqual([]);
  });
});

test('what further tests would leave is hollow beside what is known today', () => {
  const gap = { ratio: of(0.96, 1.1, 1.26), verdict: 'undecided' as const };
  const heatedNight = {
    test: 'heated-night' as const,
    moreNights: null,
    powerW: 5000,
    durationH: 8,
    warmestC: 25,
    ratio: of(0.99, 1.1, 1.2),
    chanceToDecide: 0.4,
    text: 'one heated night',
  };
  const marks = testMarks({ gap, furtherTests: [heatedNight] }, 0.15);
  expect(marks.map(({ kind }) => kind)).toEqual(['measured', 'other', 'drawn', 'drawn']);
  expect(marks[1]).toMatchObject({ label: 'Heated night', low: 0.99, high: 1.2 });
});

test('only rooms with a time constant of their own stand on the rule of rooms', () => {
  const look = { place: 'Hall', file: 'hall.csv', expected: null, inWind: null, chance: 1, notes: [] };
  const whereToLook = [
    { ...look, kind: 'room' as const, ratio: of(0.9, 0.95, 1) },
    { ...look, kind: 'room-level' as const, index: of(0.9, 0.95, 1) },
  ];
  expect(roomMarks({ whereToLook }).map(({ label }) => label)).toEqual(['Hall', 'As the house']);
  expect(roomMarks({ whereToLook: whereToLook.slice(1) })).toEqual([]);
});

test('of all ways only the one that leads is a pencil mark', () => {
  const way = { heatLossWK: of(99, 113, 130), notes: [] };
  const marks = wayMarks(
    {
      heatLossWK: { ...of(99, 113, 130), method: 'network' },
      estimates: [
        { ...way, method: 'capacity-over-tau' },
        { ...way, method: 'network' },
      ],
    },
    null,
  );
  expect(marks.map(({ label, kind }) => [label, kind])).toEqual([
    ['Mass over rate', 'other'],
    ['Network', 'measured'],
  ]);
});
