import { expect, test } from 'vitest';
import { fisherScoring } from '../../src/maths/fisherScoring.ts';
import { random } from '../proving/random.ts';

const source = random(2, 'scoring');
const sample = Float64Array.from({ length: 200 }, () => 4 + 0.3 * source.normal());
const mean = sample.reduce((sum, it) => sum + it, 0) / sample.length;
const variance = sample.reduce((sum, it) => sum + (it - mean) ** 2, 0) / sample.length;

const innovate = (parameters: Float64Array, innovations: Float64Array, variances: Float64Array) => {
  sample.forEach((it, t) => {
    innovations[t] = it - parameters[0];
    variances[t] = Math.exp(2 * parameters[1]);
  });
};

test('with flat priors the mean and the deviation of a sample are found', () => {
  const fit = fisherScoring({
    count: sample.length,
    priors: [
      { mean: 0, sd: 1e3 },
      { mean: 0, sd: 1e3 },
    ],
    start: Float64Array.of(0, 0),
    innovate,
  });
  // The search ends a fiftieth of the objective away from its top: a seventh of a standard error.
  expect(Math.abs((fit?.parameters[0] ?? 0) - mean)).toBeLessThan(0.15 * Math.sqrt(variance / 200));
  expect(Math.abs(Math.exp(fit?.parameters[1] ?? 0) / Math.sqrt(variance) - 1)).toBeLessThan(
    0.15 / Math.sqrt(400),
  );
});

test('a prior as sure as the sample draws the mean half the way', () => {
  const se = 0.3 / Math.sqrt(200);
  const fit = fisherScoring({
    count: sample.length,
    priors: [{ mean: mean + 4 * se, sd: se }],
    start: Float64Array.of(mean),
    innovate: (parameters, innovations, variances) =>
      innovate(Float64Array.of(parameters[0], Math.log(0.3)), innovations, variances),
  });
  expect(Math.abs((fit?.parameters[0] ?? 0) - (mean + 2 * se))).toBeLessThan(0.15 * se);
});

test('a barred start is no fit', () => {
  const fit = fisherScoring({
    count: 1,
    priors: [{ mean: 0, sd: 1 }],
    start: Float64Array.of(0),
    innovate: (_, innovations) => innovations.fill(Number.NaN),
  });
  expect(fit).toBeNull();
});
