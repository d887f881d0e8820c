import { describe, expect, test } from 'vitest';
import { type ContinuousSystem, discretise, type Step } from '../../src/maths/discretise.ts';
import { matrixOf, product, transposed } from '../../src/maths/matrix.ts';

const relative = (actual: number, expected: number) => Math.abs(actual - expected) / Math.abs(expected);

describe('one state', () => {
  const rate = 1 / 36_000;
  const step = 1800;
  const { transition, atStart, atEnd, covariance } = discretise(
    { drift: [[-rate]], inputs: [[rate]], noise: [2e-6] },
    step,
  );
  const decay = Math.exp(-rate * step);

  test('decays by its time constant', () => {
    expect(relative(transition[0][0], decay)).toBeLessThan(1e-12);
  });

  test('follows an input that is held, and one that rises', () => {
    // ∫ rate·e^(−rate·s) ds, and the same with the input's share of the step that is over: closed forms by hand
    const rising = 1 - (1 - decay) / (rate * step);
    expect(relative(atStart[0][0] + atEnd[0][0], 1 - decay)).toBeLessThan(1e-12);
    expect(relative(atEnd[0][0], rising)).toBeLessThan(1e-10); // two nearly equal numbers subtracted
  });

  test('gathers the variance of an Ornstein-Uhlenbeck process', () => {
    expect(relative(covariance[0][0], (2e-6 * (1 - decay ** 2)) / (2 * rate))).toBeLessThan(1e-12);
  });
});

describe('three states', () => {
  const system: ContinuousSystem = {
    drift: [
      [-5e-4, 3e-4, 1e-4],
      [2e-5, -3e-5, 0],
      [1e-5, 0, -1e-5],
    ],
    inputs: [
      [1e-4, 1e-5, 0],
      [1e-7, 0, 0],
    ],
    noise: [3e-6, 1e-7, 2e-8],
  };

  test('many small steps of the equations come to one exact step', () => {
    const step = 1800;
    const exact = discretise(system, step);
    const small = manySmallSteps(system, step, 20_000);
    // Heun's rule over 20000 steps: (5e-4 · 0.09)² per step relative, about 1e-9 over all; Euler's for the noise 5e-5.
    exact.transition.flat().forEach((it, k) => {
      expect(Math.abs(it - small.transition.flat()[k])).toBeLessThan(1e-8);
    });
    exact.atEnd.flat().forEach((it, k) => {
      expect(Math.abs(it - small.atEnd.flat()[k])).toBeLessThan(1e-8);
    });
    exact.atStart.flat().forEach((it, k) => {
      expect(Math.abs(it - small.atStart.flat()[k])).toBeLessThan(1e-8);
    });
    exact.covariance.flat().forEach((it, k) => {
      const scale = Math.max(...small.covariance.flat());
      expect(Math.abs(it - small.covariance.flat()[k])).toBeLessThan(1e-4 * scale);
    });
  });

  test('two steps one after the other are one of twice the length', () => {
    const one = discretise(system, 900);
    const two = discretise(system, 1800);
    const carried = product(product(one.transition, one.covariance), transposed(one.transition));
    product(one.transition, one.transition).forEach((row, i) => {
      row.forEach((it, j) => {
        expect(Math.abs(it - two.transition[i][j])).toBeLessThan(1e-13);
        expect(relative(one.covariance[i][j] + carried[i][j], two.covariance[i][j])).toBeLessThan(1e-9);
      });
    });
  });

  test('a state a thousand times faster than the step settles to its stationary variance', () => {
    const rate = 1;
    const { covariance } = discretise({ drift: [[-rate]], inputs: [], noise: [4] }, 1000);
    expect(relative(covariance[0][0], 2)).toBeLessThan(1e-9); // noise / (2 rate)
  });
});

/** By Heun's rule: the equations themselves, no exponential. */
function manySmallSteps({ drift, inputs, noise }: ContinuousSystem, step: number, parts: number): Step {
  const size = drift.length;
  const dt = step / parts;
  const apply = (x: readonly number[]) => drift.map((row) => row.reduce((sum, it, k) => sum + it * x[k], 0));
  const run = (start: readonly number[], force: (share: number) => readonly number[]) => {
    let x = start.slice();
    for (let p = 0; p < parts; p++) {
      const slope = apply(x).map((it, i) => it + force(p / parts)[i]);
      const guess = x.map((it, i) => it + dt * slope[i]);
      const next = apply(guess).map((it, i) => it + force((p + 1) / parts)[i]);
      x = x.map((it, i) => it + (dt * (slope[i] + next[i])) / 2);
    }
    return x;
  };
  const rest = new Array<number>(size).fill(0);
  const columns = rest.map((_, j) =>
    run(
      rest.map((__, i) => (i === j ? 1 : 0)),
      () => rest,
    ),
  );
  let covariance = matrixOf(size, () => 0);
  const little = matrixOf(size, (i, j) => (i === j ? 1 : 0) + dt * drift[i][j]);
  for (let p = 0; p < parts; p++) {
    const carried = product(product(little, covariance), transposed(little));
    covariance = matrixOf(size, (i, j) => carried[i][j] + (i === j ? dt * noise[i] : 0));
  }
  return {
    transition: matrixOf(size, (i, j) => columns[j][i]),
    atStart: inputs.map((column) => run(rest, (share) => column.map((it) => it * (1 - share)))),
    atEnd: inputs.map((column) => run(rest, (share) => column.map((it) => it * share))),
    covariance,
  };
}
