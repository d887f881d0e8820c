import { describe, expect, test } from 'vitest';
import { airLayerResistance } from '../../src/fabric/airLayers.ts';
import type { BuildUp, BuildUpLayer } from '../../src/fabric/buildUp.ts';
import { transmittanceOf } from '../../src/fabric/transmittance.ts';
import { air, bridge, solid, wallSurfaces } from './walls.ts';

const across = (...layers: BuildUpLayer[]): BuildUp => ({ facing: 'across', layers });
const resultOf = (...layers: BuildUpLayer[]) => transmittanceOf(across(...layers), wallSurfaces);

describe('an unventilated air layer', () => {
  // MEMORY: ISO 6946:2017 Table 8
  const millimetres = [0, 5, 7, 10, 15, 25, 50, 100, 300];
  test.each([
    ['across', [0, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18]],
    ['up', [0, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16]],
    ['down', [0, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23]],
  ] as const)('resists as tabulated when heat flows %s', (facing, row) => {
    millimetres.forEach((thickness, i) => {
      expect(airLayerResistance(facing, thickness / 1000)).toBeCloseTo(row[i], 12);
    });
  });
  test('is interpolated between the rows', () => {
    // COMPUTED by hand: halfway between 15 and 25 mm, and between 50 and 100 mm
    expect(airLayerResistance('across', 0.02)).toBeCloseTo(0.175, 12);
    expect(airLayerResistance('down', 0.075)).toBeCloseTo(0.215, 12);
  });
  test('thicker than 300 mm counts as 300 mm, and it is said', () => {
    expect(airLayerResistance('down', 0.8)).toBe(0.23);
    expect(resultOf(solid(0.1, 0.5), air(0.8)).findings).toEqual([
      { code: 'air-layer-thick', thickness: 0.8, taken: 0.3, where: { key: 'layers[1]' } },
    ]);
  });
});

describe('a well ventilated air layer', () => {
  test('ends the build-up: it and the cladding count for nothing, and the air in it is still', () => {
    const result = resultOf(solid(0.1, 0.04), air(0.025, 'ventilated'), solid(0.02, 0.1));
    // COMPUTED by hand: 0.13 + 0.1/0.04 + 0.13
    expect(result.resistance).toBeCloseTo(2.76, 12);
    expect(result.cases[0].surfaces).toEqual({ inside: 0.13, outside: 0.13 });
  });
  test('hides what is wrong outside it', () => {
    const metal = solid(0.1, 0.04, null, null, bridge(0.01, 50));
    expect(resultOf(solid(0.1, 0.04), air(0.025, 'ventilated'), metal, metal).findings).toEqual([]);
  });
});

describe('a slightly ventilated air layer', () => {
  // COMPUTED by hand: closed 0.13 + 2.5 + 0.18 + 0.2 + 0.04 = 3.05; open 0.13 + 2.5 + 0.13 = 2.76
  const wall = (opening: number | null) => [
    solid(0.1, 0.04),
    air(0.025, 'slightly', opening),
    solid(0.02, 0.1),
  ];
  test.each([
    ['500 mm² per metre counts as closed', 500e-6, 3.05],
    ['less than that as closed too', 100e-6, 3.05],
    // 0.75 · 3.05 + 0.25 · 2.76
    ['750 mm² is a quarter of the way to open', 750e-6, 2.9775],
    ['1500 mm² as open', 1500e-6, 2.76],
    ['more than that as open too', 4000e-6, 2.76],
  ])('with openings of %s', (_, opening, resistance) => {
    const result = resultOf(...wall(opening));
    expect(result.resistance).toBeCloseTo(resistance, 12);
    expect(result.findings).toEqual([]);
  });
  test('without its openings is taken as halfway open, and it is said', () => {
    const result = resultOf(...wall(null));
    expect(result.resistance).toBeCloseTo((3.05 + 2.76) / 2, 12);
    expect(result.findings).toEqual([
      { code: 'openings-assumed', opening: 1000e-6, where: { key: 'layers[1]' } },
    ]);
  });
  test('shows both cases and their share', () => {
    const { cases } = resultOf(...wall(750e-6));
    expect(cases.map((it) => it.share)).toEqual([0.75, 0.25]);
    expect(cases.map((it) => it.layers.length)).toEqual([3, 1]);
  });
  test('counts as far as it is closed, as does what lies outside it', () => {
    expect(resultOf(...wall(750e-6)).layers.map((it) => it.counts)).toEqual([1, 0.75, 0.75]);
    const open = [solid(0.1, 0.04), air(0.05, 'ventilated'), solid(0.02, 0.1)];
    expect(resultOf(...open).layers.map((it) => it.counts)).toEqual([1, 0, 0]);
  });
  test('beside another one counts each on its own', () => {
    // COMPUTED by hand: inner layer half open; of the closed half the outer one is again half open.
    // closed, closed 0.17 + 2.5 + 0.18 + 0.2 + 0.18 = 3.23; closed, open 0.26 + 2.5 + 0.18 + 0.2 = 3.14; open
    // 2.76
    const result = resultOf(...wall(1000e-6), air(0.05, 'slightly', 1000e-6));
    expect(result.resistance).toBeCloseTo(0.25 * 3.23 + 0.25 * 3.14 + 0.5 * 2.76, 12);
  });
});
