/**
 * Transmittances against worked examples. READ: the figure stands in the source named.
 * MEMORY: known, not seen this time. COMPUTED: no published figure; worked out independently by the published
 * formula.
 */
import { describe, expect, test } from 'vitest';
import type { BuildUpLayer } from '../../src/fabric/buildUp.ts';
import { transmittanceOf } from '../../src/fabric/transmittance.ts';
import { bridge, solid, stated } from '../fabric/walls.ts';

const wall = { inside: 0.13, outside: 0.04 };
const roof = { inside: 0.1, outside: 0.04 };
const across = (...layers: BuildUpLayer[]) => ({ facing: 'across', layers }) as const;
const up = (...layers: BuildUpLayer[]) => ({ facing: 'up', layers }) as const;

/** Asserts |value - expected| <= tolerance, with the printed figure's own tolerance. */
const near = (value: number | null, expected: number, tolerance: number) => {
  expect(Math.abs((value ?? Number.NaN) - expected), `${value} against ${expected}`).toBeLessThanOrEqual(
    tolerance,
  );
};

describe('the timber-framed wall of Building Standards (Scotland) Annex 6.B, 6.B.2', () => {
  // READ: resistances 0.132, 0.090, 0.146, 3.333 / 1.077, 0.100, 0.130, 0.040 and fractions 0.905 / 0.095.
  // The cavity's 0.09 is the 1997 edition's halving, so it is entered as stated. 140 mm of timber at 0.13 is
  // 1.077.
  const layers = across(
    stated(0.1),
    stated(3.333, 0.14, bridge(0.095, 0.13)),
    stated(0.146),
    stated(0.09),
    stated(0.132),
  );
  // Three decimals are printed and seven resistances added up: 0.002 on resistances, 0.0005 on the
  // transmittance.
  test('has the printed resistances through insulation and through timber', () => {
    const [insulation, timber] = transmittanceOf(layers, wall).cases[0].sections;
    near(insulation.resistance, 3.971, 0.002); // READ
    near(insulation.fraction, 0.905, 1e-12); // READ
    near(timber.resistance, 1.715, 0.002); // READ
    near(timber.fraction, 0.095, 1e-12); // READ
    expect(timber.bridged).toEqual([1]);
  });
  test('has the printed resistance of each layer and surface', () => {
    const { layers: workings, cases } = transmittanceOf(layers, wall);
    // READ, inside to outside: two plasterboards, wool, plywood, cavity, brick.
    expect(workings.map((it) => it.clear)).toEqual([0.1, 3.333, 0.146, 0.09, 0.132]);
    near(workings[1].bridge?.resistance ?? null, 1.077, 0.0005); // READ
    expect(cases[0].surfaces).toEqual({ inside: 0.13, outside: 0.04 }); // READ
    expect(workings.map((it) => it.counts)).toEqual([1, 1, 1, 1, 1]);
  });
  test('has limits 3.530 and 3.418, and U 0.288', () => {
    const result = transmittanceOf(layers, wall);
    near(result.cases[0].layers[1], 2.78, 0.002); // COMPUTED
    near(result.upper, 3.53, 0.002); // COMPUTED
    near(result.lower, 3.418, 0.002); // COMPUTED
    near(result.resistance, 3.474, 0.002); // COMPUTED
    near(result.transmittance, 0.288, 0.0005); // COMPUTED
    near(result.relativeError, (3.53 - 3.418) / (2 * 3.474), 0.0005); // COMPUTED
    near(result.error, (3.53 - 3.418) / 2, 0.002); // COMPUTED
    expect(result.findings).toEqual([]);
  });
  test('needs no correction for air gaps of level 1: 0.0064 is 2.2 % of U', () => {
    const { corrections, transmittance } = transmittanceOf(layers, wall, { airGapLevel: 1, fasteners: null });
    near(corrections.airGaps, 0.0064, 0.00005); // COMPUTED
    expect(corrections.layer).toBe(1);
    expect(corrections.applied).toBe(false);
    near(transmittance, 0.288, 0.0005); // COMPUTED
  });
});

test('a solid brick wall of 220 mm with 13 mm of dense plaster has U 2.09', () => {
  // MEMORY: CIBSE Guide A 2006, Tables 3.49 and 3.50; conductivities 0.77 and 0.57.
  near(transmittanceOf(across(solid(0.013, 0.57), solid(0.22, 0.77)), wall).transmittance, 2.09, 0.005);
});

test('a flat roof of U 2.57 gets U 0.25 from another 3.7 m²K/W over its deck', () => {
  // READ: Energy Saving Trust, best-practice refurbishment table.
  const before = stated(1 / 2.57 - 0.14);
  near(transmittanceOf(up(before, stated(3.7)), roof).transmittance, 0.25, 0.006);
});

describe('insulation over a roof deck, Approved Document L 2002, base thicknesses', () => {
  const conductivities = [0.02, 0.025, 0.03, 0.035, 0.04, 0.045, 0.05];
  // READ: thickness [mm] by design U and conductivity. Printed to a millimetre: U is good to 0.0025.
  const table: [number, number[]][] = [
    [0.15, [131, 163, 196, 228, 261, 294, 326]],
    [0.2, [97, 122, 146, 170, 194, 219, 243]],
    [0.25, [77, 97, 116, 135, 154, 174, 193]],
    [0.3, [64, 80, 96, 112, 128, 144, 160]],
    [0.35, [54, 68, 82, 95, 109, 122, 136]],
    [0.4, [47, 59, 71, 83, 94, 106, 118]],
  ];
  test.each(table)('the printed thicknesses give U %f', (transmittance, thicknesses) => {
    thicknesses.forEach((thickness, i) => {
      const result = transmittanceOf(up(solid(thickness / 1000, conductivities[i])), roof);
      near(result.transmittance, transmittance, 0.0025);
    });
  });
});

describe('a full-fill cavity wall with mortar joints and ties', () => {
  // COMPUTED throughout, by the formulas of ISO 6946:2017; tolerance 0.0002.
  const layers = across(
    solid(0.013, 0.18),
    solid(0.1, 0.15, null, null, bridge(0.066, 0.88)),
    solid(0.1, 0.035),
    solid(0.102, 0.77),
  );
  const ties = { count: 2.5, area: 12.5e-6, conductivity: 17 };
  test('has limits 3.8564 and 3.7364, and U 0.2634 before corrections', () => {
    const result = transmittanceOf(layers, wall);
    near(result.upper, 3.8564, 0.0002);
    near(result.lower, 3.7364, 0.0002);
    near(result.resistance, 3.7964, 0.0002);
    near(result.transmittance, 0.2634, 0.0002);
    // COMPUTED by hand: 0.013/0.18; 0.1/0.15 beside 0.1/0.88; 0.1/0.035; 0.102/0.77
    const resistances = result.layers.map(({ clear, bridge: joint }) => [clear, joint?.resistance ?? null]);
    const expected = [
      [0.0722, null],
      [0.6667, 0.1136],
      [2.8571, null],
      [0.1325, null],
    ];
    expected.forEach(([clear, joint], i) => {
      near(resistances[i][0], clear ?? Number.NaN, 0.0001);
      if (joint !== null) near(resistances[i][1], joint, 0.0001);
    });
  });
  test('has U 0.2715 with air gaps of level 1 and ties, together over 3 %', () => {
    const { corrections, transmittance } = transmittanceOf(layers, wall, { airGapLevel: 1, fasteners: ties });
    expect(corrections.layer).toBe(2);
    near(corrections.airGaps, 0.00566, 0.00001);
    near(corrections.fasteners, 0.00241, 0.00001);
    expect(corrections.applied).toBe(true);
    near(transmittance, 0.2715, 0.0002);
  });
  test('has U 0.2634 with ties alone, which are under 3 %', () => {
    const { corrections, transmittance } = transmittanceOf(layers, wall, { airGapLevel: 0, fasteners: ties });
    expect(corrections.applied).toBe(false);
    near(transmittance, 0.2634, 0.0002);
  });
});

test('a loft with wool between and over its joists has U 0.1720', () => {
  // COMPUTED; tolerance 0.0002. The roof space is entered as 0.2.
  const result = transmittanceOf(
    up(
      solid(0.0125, 0.25),
      solid(0.1, 0.044, null, null, bridge(0.09, 0.13)),
      solid(0.15, 0.044),
      stated(0.2),
    ),
    roof,
  );
  const [wool, joist] = result.cases[0].sections;
  near(wool.resistance, 6.0718, 0.0002);
  near(joist.resistance, 4.5683, 0.0002);
  near(result.upper, 5.8971, 0.0002);
  near(result.lower, 5.7318, 0.0002);
  near(result.resistance, 5.8145, 0.0002);
  near(result.transmittance, 0.172, 0.0002);
});
