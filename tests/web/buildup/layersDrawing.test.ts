import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Layer } from '../../../src/house.ts';
import { layersDrawing } from '../../../web/buildup/layersDrawing.ts';

const board = (thicknessMm: number): Layer => ({ name: 'board', thicknessMm, conductivityWmK: 0.2 });
const sheet: Layer = { name: 'sheet', resistanceM2KW: 0, sdM: 100 };

test('layers lie side by side, each as wide as it is thick', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 1, max: 400, noNaN: true }), { minLength: 1, maxLength: 12 }),
      (all) => {
        const { layers, scale } = layersDrawing(all.map(board), 720, 200);
        layers.forEach(({ from, to }, i) => {
          expect((to - from) / scale).toBeCloseTo(all[i], 6);
          if (i > 0) expect(from).toBe(layers[i - 1].to);
        });
        expect(layers[layers.length - 1].to).toBeLessThanOrEqual(720);
      },
    ),
  );
});

test('a sheet without a thickness is seen and takes nothing from the scale of the others', () => {
  const { layers, scale } = layersDrawing([board(10), sheet, board(20)], 720, 200);
  expect(layers[1].to - layers[1].from).toBeGreaterThan(0);
  expect((layers[2].to - layers[2].from) / scale).toBeCloseTo(20, 9);
});

test('sheets alone are drawn as well', () => {
  const { layers } = layersDrawing([sheet], 720, 200);
  expect(layers[0].to).toBeGreaterThan(layers[0].from);
});

test('timbers are as wide for their centres as they stand', () => {
  const rafters = { name: 'rafters', widthMm: 47, spacingMm: 450, conductivityWmK: 0.13 };
  const { timbers } = layersDrawing([{ ...board(100), bridge: rafters }], 720, 200).layers[0];
  expect(timbers.length).toBeGreaterThanOrEqual(2);
  expect(timbers[0].height / (timbers[1].y - timbers[0].y)).toBeCloseTo(47 / 450, 9);
});

test('timbers known by their share alone take that share of the face', () => {
  const studs = { name: 'studs', fraction: 0.15, conductivityWmK: 0.13 };
  const { timbers } = layersDrawing([{ ...board(100), bridge: studs }], 720, 200).layers[0];
  expect(timbers.reduce((sum, { height }) => sum + height, 0)).toBeCloseTo(30, 9);
});

test('members a hair apart beside others far apart are drawn as one of their share', () => {
  const far = { name: 'frames', widthMm: 1, spacingMm: 1e5, conductivityWmK: 0.13 };
  const hair = { ...far, widthMm: 0.001, spacingMm: 0.004 };
  const { layers } = layersDrawing(
    [far, hair].map((bridge) => ({ ...board(100), bridge })),
    720,
    200,
  );
  expect(layers[1].timbers).toHaveLength(1);
  expect(layers[1].timbers[0].height).toBeCloseTo(200 / 4, 9);
});
