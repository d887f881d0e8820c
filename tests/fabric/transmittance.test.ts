import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BuildUp, BuildUpLayer } from '../../src/fabric/buildUp.ts';
import { noCorrections } from '../../src/fabric/corrections.ts';
import { surfacesOf } from '../../src/fabric/surfaces.ts';
import { transmittanceOf } from '../../src/fabric/transmittance.ts';
import { air, anyBridged, anyLayers, anySolids, bridge, solid, stated, wallSurfaces } from './walls.ts';

const across = (...layers: BuildUpLayer[]): BuildUp => ({ facing: 'across', layers });
/** Uncorrected, and told even where the method would refuse it: the properties hold for the limits' mean. */
const U = (...layers: BuildUpLayer[]) => 1 / transmittanceOf(across(...layers), wallSurfaces).resistance;

describe('a build-up', () => {
  test('has a total resistance between its limits, the upper one never below the lower one', () => {
    fc.assert(
      fc.property(anyLayers, (layers) => {
        const { upper, lower, resistance, relativeError } = transmittanceOf(across(...layers), wallSurfaces);
        expect(upper).toBeGreaterThanOrEqual(lower * (1 - 1e-12));
        expect(resistance).toBeLessThanOrEqual(upper * (1 + 1e-12));
        expect(resistance).toBeGreaterThanOrEqual(lower * (1 - 1e-12));
        expect(relativeError).toBeLessThan(1);
      }),
    );
  });
  test('never gets a higher transmittance from a thicker or better layer', () => {
    fc.assert(
      fc.property(anyLayers, anyBridged, fc.double({ min: 1, max: 5, noNaN: true }), (layers, one, times) => {
        const with_ = (layer: BuildUpLayer) => U(layer, ...layers);
        const rounding = 1 + 1e-12;
        expect(with_({ ...one, thickness: one.thickness * times })).toBeLessThanOrEqual(
          with_(one) * rounding,
        );
        expect(with_({ ...one, conductivity: one.conductivity / times })).toBeLessThanOrEqual(
          with_(one) * rounding,
        );
      }),
    );
  });
  test('keeps its transmittance when a plain layer is split in two', () => {
    fc.assert(
      fc.property(anySolids, fc.double({ min: 0.01, max: 0.99, noNaN: true }), ([first, ...rest], part) => {
        const inner = { ...first, thickness: first.thickness * part };
        const outer = { ...first, thickness: first.thickness * (1 - part) };
        const whole = U(first, ...rest);
        expect(Math.abs(U(inner, outer, ...rest) / whole - 1)).toBeLessThan(1e-12);
      }),
    );
  });
  test('without bridges has equal limits and no error of method', () => {
    const { upper, lower, relativeError } = transmittanceOf(across(solid(0.1, 0.5), air(0.05)), wallSurfaces);
    // COMPUTED by hand: 0.13 + 0.1/0.5 + 0.18 + 0.04
    expect(upper).toBeCloseTo(0.55, 12);
    expect(lower).toBeCloseTo(0.55, 12);
    expect(relativeError).toBeCloseTo(0, 12);
  });
});

describe('bridges', () => {
  test('of two layers give four sections, crossing at random, and it is said', () => {
    const result = transmittanceOf(
      across(
        solid(0.1, 0.04, null, null, bridge(0.1, 0.13)),
        solid(0.05, 0.04, null, null, bridge(0.2, 0.13)),
      ),
      wallSurfaces,
    );
    const { sections } = result.cases[0];
    // COMPUTED by hand: products of 0.9 / 0.1 and 0.8 / 0.2
    expect(sections.map((it) => it.fraction.toFixed(2)).sort()).toEqual(['0.02', '0.08', '0.18', '0.72']);
    // COMPUTED by hand: 0.17 + 0.1/0.13 + 0.05/0.13 = 1.32385
    expect(sections.find((it) => it.bridged.length === 2)?.resistance).toBeCloseTo(1.32385, 5);
    expect(result.findings).toEqual([{ code: 'bridges-cross', count: 2, where: { key: 'layers' } }]);
  });
  test('of many layers do not multiply without end, and the limits keep their order', () => {
    const layers = Array.from({ length: 40 }, () => solid(0.01, 0.04, null, null, bridge(0.1, 0.13)));
    const { upper, lower, cases } = transmittanceOf(across(...layers), wallSurfaces);
    expect(cases[0].sections.length).toBe(1024);
    expect(upper).toBeGreaterThan(lower);
  });
  test('that fill the whole layer replace it', () => {
    const all = solid(0.1, 0.04, null, null, bridge(1, 0.13));
    expect(U(all)).toBeCloseTo(U(solid(0.1, 0.13)), 12);
    expect(U(stated(0, 0.1, bridge(1, 0.13)))).toBeCloseTo(U(solid(0.1, 0.13)), 12);
  });
});

describe('corrections', () => {
  test('for fasteners of poor conductors are none', () => {
    // ISO 6946 Annex F: none below 1 W/(mK) (MEMORY)
    const asked = { airGapLevel: 0, fasteners: { count: 10, area: 1e-4, conductivity: 0.9 } } as const;
    const { corrections } = transmittanceOf(across(solid(0.1, 0.035)), wallSurfaces, asked);
    expect(corrections.fasteners).toBe(0);
  });
  test('for fasteners are left out, and said, when the insulation has no thickness', () => {
    const asked = { airGapLevel: 0, fasteners: { count: 10, area: 1e-4, conductivity: 50 } } as const;
    const { findings, corrections } = transmittanceOf(across(solid(0.1, 1), stated(3)), wallSurfaces, asked);
    expect(corrections.applied).toBe(false);
    expect(findings).toEqual([{ code: 'fasteners-without-thickness', where: { key: 'layers[1]' } }]);
  });
  test('for air gaps of level 2 count four times those of level 1', () => {
    const gaps = (airGapLevel: 1 | 2) =>
      transmittanceOf(across(solid(0.2, 0.035)), wallSurfaces, { ...noCorrections, airGapLevel }).corrections
        .airGaps;
    // ΔU″ 0.01 and 0.04, ISO 6946 Annex F (MEMORY)
    expect(gaps(2) / gaps(1)).toBeCloseTo(4, 12);
  });
});

describe('surfaces', () => {
  test('resist 0.13 and 0.04 on a wall, 0.10 and 0.04 on a roof, 0.17 and 0.04 on a floor', () => {
    // ISO 6946:2017 Table 7: MEMORY; 0.13 and 0.04 READ in Building Standards (Scotland) Annex 6.B
    expect(surfacesOf('across', 'outside')).toEqual({ inside: 0.13, outside: 0.04 });
    expect(surfacesOf('up', 'outside')).toEqual({ inside: 0.1, outside: 0.04 });
    expect(surfacesOf('down', 'outside')).toEqual({ inside: 0.17, outside: 0.04 });
  });
  test('towards still air resist the same on both faces', () => {
    // ISO 6946:2017 6.8: MEMORY
    expect(surfacesOf('up', 'void')).toEqual({ inside: 0.1, outside: 0.1 });
    expect(surfacesOf('across', 'adjacent')).toEqual({ inside: 0.13, outside: 0.13 });
  });
});

test.each([0, 5e-324])(
  'a layer that resists %d m²K/W between members resists nothing at its lower limit',
  (free) => {
    const layers = [stated(free, 0.05, bridge(0.1, 0.13)), solid(0.1, 0.04)];
    const { lower, upper, transmittance } = transmittanceOf(across(...layers), wallSurfaces);
    // COMPUTED by hand: 0.17 + 2.5; 1/(0.9/2.67 + 0.1/(2.67 + 0.05/0.13)); 1/2.687024
    expect(lower).toBeCloseTo(2.67, 12);
    expect(upper).toBeCloseTo(2.704047, 6);
    expect(transmittance).toBeCloseTo(0.372159, 6);
  },
);
