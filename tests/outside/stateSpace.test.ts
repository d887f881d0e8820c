/**
 * A house of one and of two temperatures left to cool: closed forms, COMPUTED independently (eigenvalues; the driven
 * one also by RK4). The tests of serial correlation that judge its residuals are in serialCorrelation.test.ts.
 */
import { expect, test } from 'vitest';
import { modelAt } from '../../src/heatloss/stateSpace/thermalModel.ts';
import { discretise } from '../../src/maths/discretise.ts';

const HOUR = 3600;

/** Stepped exactly through instants `step` apart; what the first state is at each. */
function cool(
  parameters: Float64Array,
  states: 1 | 2,
  start: readonly number[],
  driver: (time: number) => number,
  step: number,
  steps: number,
): number[] {
  const { transition, atStart, atEnd } = discretise(modelAt(states, parameters), step);
  let state = start.slice();
  return Array.from({ length: steps }, (_, t) => {
    const [from, to] = [driver(t * step), driver((t + 1) * step)];
    state = transition.map(
      (row, i) =>
        row.reduce((sum, it, k) => sum + it * state[k], 0) + atStart[0][i] * from + atEnd[0][i] * to,
    );
    return state[0];
  });
}

/** Of heat loss and inside capacity; the rest does not touch the course without noise, heat or sun. */
const oneState = (heatLoss: number, capacity: number) =>
  Float64Array.of(Math.log(heatLoss), 0, 0, Math.log(capacity), 0, 0);

// Ci 3 MJ/K, Ce 25 MJ/K, Ri 0.002, Ro 0.006 K/W: H = 125 W/K, the shell's mass at a quarter, nothing directly out.
const NOTHING = -40;
const twoStates = Float64Array.of(
  Math.log(125),
  0,
  0,
  Math.log(3e6),
  0,
  0,
  NOTHING,
  Math.log(0.25 / 0.75),
  Math.log(25e6),
  0,
  0,
);

test('two nodes in constant cold follow the closed form', () => {
  const course = cool(twoStates, 2, [21, 20], () => 5, HOUR / 2, 24);
  const expected: [number, number][] = [
    [0.5, 20.72107],
    [1, 20.47633],
    [2, 20.05487],
    [4, 19.354],
    [8, 18.1567],
    [12, 17.07851],
  ];
  // Half of the last digit
  for (const [hours, it] of expected) expect(Math.abs(course[2 * hours - 1] - it)).toBeLessThan(5e-6);
});

test('two nodes have the time constants 1.4822 h and 46.8511 h', () => {
  const { transition } = discretise(modelAt(2, twoStates), HOUR);
  const [[a, b], [c, d]] = transition;
  const half = (a + d) / 2;
  const root = Math.sqrt(half ** 2 - (a * d - b * c));
  // Half of the last digit
  expect(Math.abs(-1 / Math.log(half - root) - 1.4822)).toBeLessThan(5e-5);
  expect(Math.abs(-1 / Math.log(half + root) - 46.8511)).toBeLessThan(5e-5);
});

test('one node under a daily wave outside follows the closed form', () => {
  const outside = (time: number) => 4 + 3 * Math.cos((2 * Math.PI * time) / (24 * HOUR));
  const course = cool(oneState(100, 100 * 40 * HOUR), 1, [20], outside, 60, 12 * 60);
  const expected = [19.35931, 18.71228, 18.03188, 17.3098, 16.55817, 15.8059];
  // Half of the last digit; straight lines over a minute of the wave stray by 1e-5 of it at most, 40 h damps that.
  expected.forEach((it, k) => {
    expect(Math.abs(course[(k + 1) * 120 - 1] - it)).toBeLessThan(6e-6);
  });
});

test('one node in constant cold follows the closed form', () => {
  const course = cool(oneState(100, 100 * 40 * HOUR), 1, [20], () => 5, HOUR, 12);
  const expected: [number, number][] = [
    [1, 19.62965],
    [4, 18.57256],
    [8, 17.28096],
    [12, 16.11227],
  ];
  for (const [hours, it] of expected) expect(Math.abs(course[hours - 1] - it)).toBeLessThan(5e-6);
});
