import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { linearLeastSquares } from '../../src/maths/leastSquares.ts';
import { levenbergMarquardt, type NonlinearFit } from '../../src/maths/levenbergMarquardt.ts';

const fitted = (fit: NonlinearFit) => {
  if (fit.kind === 'not fitted') throw new Error(fit.reason);
  return fit;
};
const hours = Array.from({ length: 25 }, (_, i) => i / 2);

/** A fall from `start` towards 5 °C, in hours. */
const fall = (start: number, timeConstant: number, hour: number) =>
  5 + (start - 5) * Math.exp(-hour / timeConstant);

/** Residuals of such a fall, by its start and the logarithm of its time constant, against readings. */
const against = (readings: readonly number[]) => (parameters: Float64Array, out: Float64Array) => {
  hours.forEach((hour, i) => {
    out[i] = fall(parameters[0], Math.exp(parameters[1]), hour) - readings[i];
  });
};

describe('a search', () => {
  test('finds the fall that the readings lie on from any time constant within a factor of four', () => {
    const start = fc.double({ min: 12, max: 28, noNaN: true });
    const timeConstant = fc.double({ min: 8, max: 150, noNaN: true });
    const factor = fc.double({ min: 0.25, max: 4, noNaN: true });
    fc.assert(
      fc.property(start, timeConstant, start, factor, (from, tau, guess, off) => {
        const readings = hours.map((hour) => fall(from, tau, hour));
        const begin = [guess, Math.log(tau * off)];
        const fit = fitted(
          levenbergMarquardt({ count: hours.length, start: begin, residuals: against(readings) }),
        );
        // readings carry 16 digits; the curvature of so short a fall costs half of them at most
        expect(Math.abs(fit.parameters[0] / from - 1)).toBeLessThan(1e-8);
        expect(Math.abs(fit.parameters[1] - Math.log(tau))).toBeLessThan(1e-8);
      }),
    );
  });

  test('of a problem that is linear finds what linear least squares finds, errors included', () => {
    const value = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(fc.array(value, { minLength: 8, maxLength: 8 }), (observed) => {
        const rows = observed.map((_, i) => [1, (i - 3) ** 2]);
        const linear = linearLeastSquares(rows, observed);
        if (linear.kind === 'not fitted') throw new Error(linear.reason);
        fc.pre(linear.residualStandardDeviation > 1e-3);
        const fit = fitted(
          levenbergMarquardt({
            count: observed.length,
            start: [1, 1],
            residuals: (p, out) => {
              observed.forEach((it, i) => {
                out[i] = p[0] + p[1] * rows[i][1] - it;
              });
            },
          }),
        );
        // differences carry ten digits, and the search stops at a gradient of 1e-10
        for (const k of [0, 1]) {
          expect(Math.abs(fit.parameters[k] - linear.coefficients[k])).toBeLessThan(1e-6);
          expect(Math.abs(fit.covariance[k][k] / linear.covariance[k][k] - 1)).toBeLessThan(1e-6);
        }
      }),
    );
  });

  test('comes to the same with the derivatives given as with differences', () => {
    const readings = hours.map((hour, i) => fall(20, 30, hour) + 0.05 * Math.sin(7 * i));
    const problem = { count: hours.length, start: [18, 3], residuals: against(readings) };
    const byDifferences = fitted(levenbergMarquardt(problem));
    const byDerivatives = fitted(
      levenbergMarquardt({
        ...problem,
        jacobian: ([start, logTau], out) => {
          hours.forEach((hour, i) => {
            const passed = hour / Math.exp(logTau);
            const left = Math.exp(-passed);
            out[0][i] = left;
            out[1][i] = (start - 5) * left * passed;
          });
        },
      }),
    );
    for (const k of [0, 1]) {
      expect(byDifferences.parameters[k]).toBeCloseTo(byDerivatives.parameters[k], 7); // differences: 1e-10
      expect(byDifferences.covariance[k][k]).toBeCloseTo(byDerivatives.covariance[k][k], 7);
    }
  });

  test('leaves the start as it was given', () => {
    const start = [18, 3];
    levenbergMarquardt({
      count: hours.length,
      start,
      residuals: against(hours.map((hour) => fall(20, 30, hour))),
    });
    expect(start).toEqual([18, 3]);
  });

  test('turns back where the residuals are not finite', () => {
    const readings = [1, 2, 3, 4].map((x) => Math.sqrt(0.01 * x));
    const fit = fitted(
      levenbergMarquardt({
        count: 4,
        start: [9],
        // the first steps overshoot below 0, where the root is NaN
        residuals: (p, out) => {
          readings.forEach((it, i) => {
            out[i] = Math.sqrt(p[0] * (i + 1)) - it;
          });
        },
      }),
    );
    expect(fit.parameters[0]).toBeCloseTo(0.01, 9);
  });
});

describe('there is no fit', () => {
  test('where the readings cannot tell two parameters apart', () => {
    const fit = levenbergMarquardt({
      count: 5,
      start: [1, 1],
      residuals: (p, out) => {
        out.forEach((_, i) => {
          out[i] = p[0] + p[1] - i;
        });
      },
    });
    expect(fit).toEqual({ kind: 'not fitted', reason: 'rank deficient' });
  });

  test('where a parameter does nothing', () => {
    const fit = levenbergMarquardt({
      count: 5,
      start: [1, 1],
      residuals: (p, out) => {
        out.forEach((_, i) => {
          out[i] = p[0] - i;
        });
      },
    });
    expect(fit).toEqual({ kind: 'not fitted', reason: 'rank deficient' });
  });

  test('with as many parameters as readings', () => {
    const fit = levenbergMarquardt({ count: 2, start: [1, 1], residuals: () => undefined });
    expect(fit).toEqual({ kind: 'not fitted', reason: 'too few' });
  });

  test('where the start makes no sense', () => {
    const fit = levenbergMarquardt({ count: 3, start: [1], residuals: (_, out) => out.fill(Number.NaN) });
    expect(fit).toEqual({ kind: 'not fitted', reason: 'not finite at the start' });
  });

  test('where the sum falls for ever', () => {
    const fit = levenbergMarquardt({
      count: 3,
      start: [1],
      residuals: (p, out) => {
        out.forEach((_, i) => {
          out[i] = (i + 1) / p[0];
        });
      },
    });
    expect(fit.kind).toBe('not fitted');
  });

  test('where every step is barred though the sum is not least', () => {
    const fit = levenbergMarquardt({
      count: 3,
      start: [1],
      jacobian: (_, out) => out[0].fill(1),
      residuals: (p, out) => {
        out.fill(p[0] < 1 ? Number.NaN : p[0]);
      },
    });
    expect(fit).toEqual({ kind: 'not fitted', reason: 'stalled' });
  });
});
