import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clearWidth, fittingOf, jointLoss } from '../../src/fabric/airGaps.ts';
import type { BuildUp, BuildUpLayer } from '../../src/fabric/index.ts';
import { anySolids, bridge, solid, stated, wallSurfaces } from './walls.ts';

const across = (...layers: BuildUpLayer[]): BuildUp => ({ facing: 'across', layers });

describe('between timbers at 450 mm centres', () => {
  test.each([
    [46, 404], // PRACTICE
    [47, 403], // PRACTICE
  ])('of %d mm a board is cut to %d mm', (width, clear) => {
    expect(clearWidth(width / 1000, 0.45)).toBeCloseTo(clear / 1000, 12);
  });
});

describe('100 mm of insulation of 0.035 W/(mK) in a wall', () => {
  // COMPUTED: R1 = 0.1/0.035 = 2.85714; RT = 0.13 + 2.85714 + 0.04 = 3.02714; U = 0.33034; (R1/RT)² = 0.89083
  const wall = across(solid(0.1, 0.035));

  test('loses nothing more by gaps of level 1: 0.0089 is 2.7 % of U', () => {
    const fitting = fittingOf(wall, wallSurfaces);
    expect(fitting?.careful).toBeCloseTo(0.33034, 5);
    expect(fitting?.gapsThrough).toBe(fitting?.careful);
  });
  test('loses 0.0356 more where air circulates around it', () => {
    // 0.33034 + 0.04·0.89083 = 0.36598
    expect(fittingOf(wall, wallSurfaces)?.airCirculates).toBeCloseTo(0.36598, 5);
  });
  test('loses 9 % more by joints of 10 mm every 600 mm', () => {
    // ISO 6946, Annex D (MEMORY), a space of d = 100 by b = 10 mm: E = 1/(2/0.9 - 1) = 0.81818; d/b = 10
    // hr = 0.5·0.81818·5.1·(1 + √101 - 10) = 2.19045; ha = 1.25; R = 1/3.44045 = 0.29066
    // joint 1/(0.13 + 0.29066 + 0.04) = 2.17081; (59·0.33034 + 2.17081)/60 = 0.36102
    const loss = jointLoss(wall, wallSurfaces, { width: 0.01, spacing: 0.6 });
    expect(loss?.share).toBeCloseTo(1 / 60, 12);
    expect(loss?.transmittance).toBeCloseTo(0.36102, 4);
  });
});

test('wider joints never lose less, and no joint loses nothing', () => {
  const width = fc.double({ min: 0.001, max: 0.05, noNaN: true });
  fc.assert(
    fc.property(anySolids, width, width, (layers, one, other) => {
      const wall = across(solid(0.1, 0.03), ...layers);
      const of = (it: number) =>
        jointLoss(wall, wallSurfaces, { width: it, spacing: 0.45 })?.transmittance ?? Number.NaN;
      const careful = fittingOf(wall, wallSurfaces)?.careful ?? Number.NaN;
      expect(of(Math.max(one, other))).toBeGreaterThanOrEqual(of(Math.min(one, other)) - 1e-12);
      expect(of(Math.min(one, other))).toBeGreaterThanOrEqual(careful - 1e-12);
    }),
  );
});

test('the gaps are in the layer that resists most, and its timbers stay', () => {
  const studs = solid(0.14, 0.035, null, null, bridge(0.15, 0.13));
  expect(fittingOf(across(solid(0.0125, 0.25), studs), wallSurfaces)?.layer).toBe(1);
});

test('a wall without layers, or insulation without a thickness, has no joints to speak of', () => {
  const joints = { width: 0.005, spacing: 0.45 };
  expect(fittingOf({ facing: 'across', layers: [] }, wallSurfaces)).toBeNull();
  expect(jointLoss({ facing: 'across', layers: [stated(3)] }, wallSurfaces, joints)).toBeNull();
});

test('a joint wider than the spacing is a mistake in the call', () => {
  expect(() => jointLoss(across(solid(0.1, 0.03)), wallSurfaces, { width: 1, spacing: 0.5 })).toThrow(
    RangeError,
  );
});
