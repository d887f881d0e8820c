/**
 * Free cooling against closed forms.
 *
 * COMPUTED: the exact solution of dT/dt = (Te − T)/tau with Te = 4 + 3·cos(2πt/24 h), checked by Runge–Kutta; and
 * T(t) = Te + (T0 − Te)·exp(−t/tau) with Te constant (READ: thesis on the decay method, its equation 7).
 * COMPUTED: two nodes by the eigenvalues of their matrix, as printed beside the test.
 */
import { describe, expect, test } from 'vitest';
import { fitDecay, freeCooling } from '../../src/cooling/index.ts';

const HOUR = 3600;
const TAU = 40 * HOUR;
const every = (step: number, hours: number) =>
  Float64Array.from({ length: (hours * HOUR) / step + 1 }, (_, i) => i * step);
const wave = (time: Float64Array) => time.map((t) => 4 + 3 * Math.cos((2 * Math.PI * t) / (24 * HOUR)));

/** The closed form, for generating readings: derived by the integrating factor. */
function closedForm(t: number): number {
  const w = (2 * Math.PI) / (24 * HOUR);
  const k = 1 / TAU;
  const forced = (3 * k * (k * Math.cos(w * t) + w * Math.sin(w * t))) / (k * k + w * w);
  const atStart = (3 * k * k) / (k * k + w * w);
  return 4 + forced + (20 - 4 - atStart) * Math.exp(-k * t);
}

describe('free cooling under a swinging outdoor temperature', () => {
  // Printed to 5 decimals; a straight line over 60 s misses the cosine by w²·60²/8·3 K, under 1e-5 K.
  const expected = [19.35931, 18.71228, 18.03188, 17.3098, 16.55817, 15.8059];
  const time = every(60, 12);
  test.each(expected.map((value, i) => [2 * (i + 1), value]))(
    'after %i h the room is at %f °C',
    (hours, value) => {
      const curve = freeCooling(time, wave(time), TAU, 20);
      expect(curve[(hours * HOUR) / 60]).toBeCloseTo(value, 4);
      expect(closedForm(hours * HOUR)).toBeCloseTo(value, 4);
    },
  );

  test('a fit driven by the outdoor readings gives back 40 h to 0.01 h', () => {
    const grid = every(600, 12);
    const fit = fitDecay(grid, grid.map(closedForm), wave(grid));
    expect(fit.kind).toBe('fitted');
    if (fit.kind === 'fitted') expect(Math.abs(fit.timeConstant.value - TAU)).toBeLessThan(0.01 * HOUR);
  });

  // The published note: such a fit must not return 40 exactly; asked here, ten times the driven fit's tolerance.
  test('a fit with the mean outdoor temperature is off by more than 0.1 h', () => {
    const grid = every(600, 12);
    const outdoor = wave(grid);
    const mean = outdoor.reduce((sum, t) => sum + t, 0) / outdoor.length;
    const fit = fitDecay(
      grid,
      grid.map(closedForm),
      outdoor.map(() => mean),
    );
    expect(fit.kind).toBe('fitted');
    if (fit.kind === 'fitted') expect(Math.abs(fit.timeConstant.value - TAU)).toBeGreaterThan(0.1 * HOUR);
  });
});

test.each([
  [1, 19.62965],
  [4, 18.57256],
  [8, 17.28096],
  [12, 16.11227],
])('with 5 °C outside all night, after %i h the room is at %f °C', (hours, value) => {
  const time = every(600, 12);
  const curve = freeCooling(
    time,
    time.map(() => 5),
    TAU,
    20,
  );
  expect(curve[(hours * HOUR) / 600]).toBeCloseTo(value, 5);
});

describe('a room of two reservoirs, 3 MJ/K inside and 25 MJ/K in the fabric', () => {
  // COMPUTED (eigenvalues): 0.002 K/W between them, 0.006 K/W to 5 °C outside, at first 21 °C and 20 °C.
  const [fast, slow] = [1.4822 * HOUR, 46.8511 * HOUR];
  const printed = [
    [0.5, 20.72107],
    [1, 20.47633],
    [2, 20.05487],
    [4, 19.354],
    [8, 18.1567],
    [12, 17.07851],
  ] as const;
  /** 16 K of two exponentials with the printed time constants; their shares by the first slope, −0.5 kW over 3 MJ/K. */
  const share = (16 / slow - 1 / 0.002 / 3e6) / (1 / slow - 1 / fast);
  const room = (t: number) => 5 + share * Math.exp(-t / fast) + (16 - share) * Math.exp(-t / slow);

  test.each(printed)('is after %f h at %f °C', (hours, expected) => {
    // The time constants are printed to 1e-4 h, which moves the temperature by less than 1e-4 K.
    expect(room(hours * HOUR)).toBeCloseTo(expected, 3);
  });

  const between = (from: number, to: number) => {
    const time = every(600, 12).filter((t) => t >= from * HOUR && t <= to * HOUR);
    const fit = fitDecay(
      time,
      time.map(room),
      time.map(() => 5),
    );
    if (fit.kind === 'not fitted') throw new Error(fit.reason);
    return fit.timeConstant.value / HOUR;
  };

  test('gives, from 4 to 12 h, its late time constant of 46.9 h to 2 %, not the 62 h of all mass times all resistance', () => {
    // What is left of the first reservoir at 4 h, exp(−4/1.48) = 7 %, bends the curve by less than that share of 2 K.
    expect(Math.abs(between(4, 12) / 46.8511 - 1)).toBeLessThan(0.02);
    expect((3e6 + 25e6) * (0.002 + 0.006)).toBeCloseTo(62.2 * HOUR, -3);
  });

  test('gives the shorter ones the earlier one begins', () => {
    const begun = [0.5, 1.5, 2.5, 3.5, 4.5].map((from) => between(from, 12));
    expect(begun).toEqual(begun.toSorted((a, b) => a - b));
    expect(begun[0]).toBeLessThan(0.97 * 46.8511);
  });
});
