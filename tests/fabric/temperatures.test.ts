import fc from 'fast-check';
import { expect, test } from 'vitest';
import { temperaturesThrough } from '../../src/fabric/temperatures.ts';
import { transmittanceOf } from '../../src/fabric/transmittance.ts';
import { anyLayers, bridge, solid, wallSurfaces } from './walls.ts';

const caseOf = (...layers: Parameters<typeof solid>[]) =>
  transmittanceOf({ facing: 'across', layers: layers.map((it) => solid(...it)) }, wallSurfaces).cases[0];

test('the temperature falls with the resistance passed', () => {
  // COMPUTED by hand: 0.13 + 0.2 + 2.5 + 0.04 = 2.87 over 20 K: 20 - 20·0.13/2.87 and so on
  const { mean, sections } = temperaturesThrough(caseOf([0.1, 0.5], [0.1, 0.04]), 20, 0);
  const expected = [19.094077, 17.700348, 0.278746];
  expect(mean).toHaveLength(3);
  mean.forEach((it, i) => {
    expect(it).toBeCloseTo(expected[i], 6);
  });
  expect(sections).toEqual([mean]);
});

test('along a timber the inside face is colder than beside it', () => {
  const { mean, sections } = temperaturesThrough(
    caseOf([0.0125, 0.25], [0.14, 0.035, null, null, bridge(0.1, 0.13)]),
    20,
    -5,
  );
  const [clear, timber] = sections;
  expect(timber[0]).toBeLessThan(mean[0]);
  expect(clear[0]).toBeGreaterThan(mean[0]);
});

test('from face to face it never leaves the range between inside and outside, nor turns back', () => {
  fc.assert(
    fc.property(anyLayers, (layers) => {
      const { cases } = transmittanceOf({ facing: 'across', layers }, wallSurfaces);
      for (const { mean, sections } of cases.map((it) => temperaturesThrough(it, 21, 3)))
        for (const line of [mean, ...sections]) {
          const steps = [21, ...line, 3];
          for (let i = 1; i < steps.length; i++) expect(steps[i]).toBeLessThanOrEqual(steps[i - 1] + 1e-9);
        }
    }),
  );
});

test('with as much warmth outside nothing falls', () => {
  expect(temperaturesThrough(caseOf([0.1, 0.5]), 18, 18).mean).toEqual([18, 18]);
});
