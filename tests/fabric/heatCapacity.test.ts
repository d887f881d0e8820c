import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BuildUpLayer } from '../../src/fabric/buildUp.ts';
import { day, periodicResponse } from '../../src/fabric/heatCapacity.ts';
import { transmittanceOf } from '../../src/fabric/transmittance.ts';
import { flowsUnderSwing } from './finiteDifference.ts';
import { air, anyLayers, anySolid, anySolids, bridge, known, solid, stated, wallSurfaces } from './walls.ts';

const across = (layers: readonly BuildUpLayer[]) => ({ facing: 'across', layers }) as const;
const response = (layers: readonly BuildUpLayer[], period?: number) =>
  periodicResponse(across(layers), wallSurfaces, period);
const ratio = (a: number, b: number) => Math.abs(a / b - 1);

test('the transfer matrix agrees with stepping the same wall through time, within 0.5 %', () => {
  fc.assert(
    fc.property(fc.array(anySolid, { minLength: 1, maxLength: 3 }), (layers) => {
      const matrix = response(layers);
      const perSwing = day / (2 * Math.PI);
      const one = flowsUnderSwing(layers, wallSurfaces, { inside: 1, outside: 0 });
      const both = flowsUnderSwing(layers, wallSurfaces, { inside: 1, outside: 1 });
      expect(ratio(matrix.insideAdmittance.modulus, one.inside)).toBeLessThan(0.005);
      expect(ratio(matrix.insideHeatCapacity, perSwing * both.inside)).toBeLessThan(0.005);
      expect(ratio(matrix.outsideHeatCapacity, perSwing * both.outside)).toBeLessThan(0.005);
      // What hardly comes through is told to 0.5 % of a thousandth of what goes in.
      expect(Math.abs(matrix.periodicTransmittance.modulus - one.outside)).toBeLessThan(
        0.005 * Math.max(one.outside, 0.001 * one.inside),
      );
      // Cells of a twentieth of the penetration depth put a swing out by 0.02 % of its lag: 36 s is a hundredth of an
      // hour. A lag of nothing and one of a day are the same.
      const apart = Math.abs(matrix.timeShift - one.lag);
      if (one.outside > 0.001 * one.inside) expect(Math.min(apart, day - apart)).toBeLessThan(36);
    }),
    { numRuns: 25 },
  );
});

describe('a build-up', () => {
  test('turned about swaps its inside and outside capacities', () => {
    fc.assert(
      fc.property(anyLayers, (layers) => {
        const closed = layers.filter((it) => it.kind !== 'air');
        const there = periodicResponse(across(closed), { inside: 0.13, outside: 0.04 });
        const back = periodicResponse(across(closed.toReversed()), { inside: 0.04, outside: 0.13 });
        const scale = there.insideHeatCapacity + there.outsideHeatCapacity + 1;
        expect(Math.abs(there.insideHeatCapacity - back.outsideHeatCapacity) / scale).toBeLessThan(1e-9);
        expect(Math.abs(there.outsideHeatCapacity - back.insideHeatCapacity) / scale).toBeLessThan(1e-9);
      }),
    );
  });
  test('keeps its capacities when a plain layer is split in two', () => {
    fc.assert(
      fc.property(anySolids, fc.double({ min: 0.01, max: 0.99, noNaN: true }), ([first, ...rest], part) => {
        const inner = { ...first, thickness: first.thickness * part };
        const outer = { ...first, thickness: first.thickness * (1 - part) };
        const whole = response([first, ...rest]);
        const split = response([inner, outer, ...rest]);
        expect(ratio(split.insideHeatCapacity, whole.insideHeatCapacity)).toBeLessThan(1e-9);
        expect(ratio(split.outsideHeatCapacity, whole.outsideHeatCapacity)).toBeLessThan(1e-9);
      }),
    );
  });
  test('under a swing of centuries passes heat as in steady state', () => {
    fc.assert(
      fc.property(anySolids, (layers) => {
        const slow = response(layers, 1e12);
        const transmittance = known(transmittanceOf(across(layers), wallSurfaces).transmittance);
        expect(ratio(slow.periodicTransmittance.modulus, transmittance)).toBeLessThan(1e-6);
        expect(ratio(slow.insideAdmittance.modulus, transmittance)).toBeLessThan(1e-6);
        expect(slow.decrement).toBeCloseTo(1, 6);
      }),
    );
  });
  test('under a slow swing stores its whole mass, shared between its two faces', () => {
    fc.assert(
      fc.property(anySolids, (layers) => {
        const mass = layers
          .map((it) => it.thickness * (it.density ?? 0) * (it.specificHeat ?? 0))
          .reduce((a, b) => a + b);
        const { insideHeatCapacity, outsideHeatCapacity } = response(layers, 1e9);
        expect(ratio(insideHeatCapacity + outsideHeatCapacity, mass)).toBeLessThan(1e-3);
      }),
    );
  });
  test('metres thick gives finite figures', () => {
    const thick = response([solid(600, 1.8, 2400, 1000), solid(600, 0.03, 30, 1400)]);
    expect(thick.insideHeatCapacity).toBeGreaterThan(0);
    expect(Number.isFinite(thick.outsideHeatCapacity)).toBe(true);
    expect(thick.periodicTransmittance.modulus).toBeLessThan(1e-12);
  });
});

test('of as many thick layers as a file may have is finite as well', () => {
  const thick = response(Array.from({ length: 100 }, () => solid(100, 0.77, 1700, 800)));
  // COMPUTED: half-infinite brick behind the surface resistance Rsi, κ1 = T/2π·1/|Rsi + 1/((1 + j)·λ/δ)|.
  const [omega, surface] = [(2 * Math.PI) / 86_400, 0.13];
  const beyond = 1 / Math.sqrt(omega * 0.77 * 1700 * 800); // modulus of 1/Y at 45°
  const modulus = Math.hypot(surface + beyond * Math.SQRT1_2, beyond * Math.SQRT1_2);
  expect(thick.insideHeatCapacity).toBeCloseTo(1 / modulus / omega, 3);
  expect(thick.periodicTransmittance.modulus).toBe(0);
});

describe('mass', () => {
  test('that is not stated is not counted, and it is said for the layer and for its bridge', () => {
    const found = response([solid(0.1, 0.04, null, 1030, bridge(0.1, 0.13)), solid(0.1, 0.5, 800, 1000)]);
    expect(found.findings).toEqual([
      { code: 'layer-without-mass', where: { key: 'layers[0]' } },
      { code: 'layer-without-mass', where: { key: 'layers[0].bridge' } },
    ]);
  });
  test('of air layers and stated resistances is none, which needs no saying', () => {
    const found = response([stated(2), air(0.05)]);
    expect(found.insideHeatCapacity).toBeCloseTo(0, 9);
    expect(found.findings).toEqual([]);
  });
  test('outside a well ventilated layer does not count', () => {
    const within = [solid(0.1, 0.5, 800, 1000), air(0.05, 'ventilated')];
    const brick = solid(0.1, 0.77, 1700, 800);
    expect(response([...within, brick])).toEqual(response(within));
  });
  test('of bridges is not lost where there are too many of them to tell apart', () => {
    const plain = solid(0.005, 0.13, 500, 1600);
    const bridged = { ...plain, bridge: bridge(0.1, 0.13, 500, 1600) };
    const many = (layer: BuildUpLayer) => response(Array<BuildUpLayer>(20).fill(layer)).insideHeatCapacity;
    expect(ratio(many(bridged), many(plain))).toBeLessThan(1e-9);
  });
  test('of studs counts by their share of the face', () => {
    // One section is all studs, the other none: the capacity lies between, in their proportion, where both
    // flows are in phase, as they are in a thin board.
    const thin = (fraction: number) =>
      response([solid(0.01, 0.13, 500, 1000, bridge(fraction, 0.13, 700, 1000))]).insideHeatCapacity;
    const board = (density: number) => response([solid(0.01, 0.13, density, 1000)]).insideHeatCapacity;
    expect(ratio(thin(0.25), 0.75 * board(500) + 0.25 * board(700))).toBeLessThan(1e-3);
  });
});
