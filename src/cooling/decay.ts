/** One room, one exponential: free cooling driven by the measured outdoor temperature. */
import type { Estimate } from '../assessment.ts';
import { lag1Autocorrelation, varianceInflation } from '../maths/autocorrelation.ts';
import { levenbergMarquardt } from '../maths/levenbergMarquardt.ts';
import { logInterval } from '../maths/logInterval.ts';

export type DecayFit =
  | {
      readonly kind: 'fitted';
      /** [s] */
      readonly timeConstant: Estimate;
      /** Standard error of the logarithm of the time constant, autocorrelation counted [–]. */
      readonly logSe: number;
      /** The fitted curve [°C]; length n, NaN outside the readings. */
      readonly curve: Float64Array;
      /** Root mean square of the residuals [K]. */
      readonly rms: number;
      readonly readings: number;
    }
  | { readonly kind: 'not fitted'; readonly reason: 'too few readings' | 'no fall towards outdoors' };

/** Fewer than this cannot show a curve: six 10-minute cells are one hour. */
const FEWEST_READINGS = 7;
/** Beyond this a night cannot be told from one that does not cool at all [s]. */
const LONGEST = 2000 * 3600;

/** No logger knows a time constant better than this, however smooth its curve: a clock and a scale error [–]. */
const LEAST_LOG_SE = 0.002;

/**
 * Temperature of a body that cools freely, one reservoir with one time constant:
 * dT/dt = (outdoor(t) − T) / timeConstant. Exact where the outdoor temperature runs straight between instants.
 *
 * @param time         instants, rising [s]; length n
 * @param outdoor      [°C]; length n, no NaN
 * @param timeConstant [s]
 * @param start        temperature at the first instant [°C]
 * @see   ISO 13790:2008 12.2.1.3 for the time constant; the step is the variation-of-constants formula
 */
export function freeCooling(
  time: Float64Array,
  outdoor: Float64Array,
  timeConstant: number,
  start: number,
): Float64Array {
  const curve = new Float64Array(time.length);
  coolInto(curve, time, outdoor, timeConstant, start);
  return curve;
}

/** The same into a curve that is at hand, of the length of `time`. */
function coolInto(
  curve: Float64Array,
  time: Float64Array,
  outdoor: Float64Array,
  timeConstant: number,
  start: number,
): void {
  curve[0] = start;
  let x = Number.NaN;
  let kept = 1;
  let lost = 0;
  for (let i = 1; i < time.length; i++) {
    const step = (time[i] - time[i - 1]) / timeConstant;
    // mostly they are even
    if (step !== x) {
      x = step;
      kept = Math.exp(-step);
      lost = -Math.expm1(-step);
    }
    const slope = outdoor[i] - outdoor[i - 1];
    curve[i] = kept * curve[i - 1] + lost * outdoor[i - 1] + slope * (1 - lost / x);
  }
}

/**
 * Time constant of a room that cools freely, driven by the measured outdoor temperature, with the starting
 * temperature free. A time constant and an offset cannot both be found from one night, so there is no offset.
 *
 * @param time    instants, rising [s]; length n
 * @param indoor  air temperature inside [°C]; length n, NaN where missing
 * @param outdoor air temperature outside [°C]; length n, no NaN
 * @throws RangeError if the lengths differ: a mistake in the caller, never in the data
 */
export function fitDecay(time: Float64Array, indoor: Float64Array, outdoor: Float64Array): DecayFit {
  if (time.length !== indoor.length || time.length !== outdoor.length)
    throw new RangeError('time, indoor and outdoor must be equally long');
  const seen = Array.from(indoor.keys()).filter((i) => !Number.isNaN(indoor[i]));
  if (seen.length < FEWEST_READINGS) return { kind: 'not fitted', reason: 'too few readings' };
  const [first, last] = [seen[0], seen[seen.length - 1]];
  const cells = seen.map((i) => i - first);
  const t = time.subarray(first, last + 1);
  const driver = outdoor.subarray(first, last + 1);

  const difference = mean(cells.map((i) => indoor[i + first] - driver[i]));
  const drop = indoor[first] - indoor[last];
  if (difference <= 0 || drop <= 0) return { kind: 'not fitted', reason: 'no fall towards outdoors' };
  const trial = new Float64Array(t.length);
  const guess = Math.min((difference * (t[t.length - 1] - t[0])) / drop, LONGEST);

  const fit = levenbergMarquardt({
    start: [Math.log(guess), indoor[first]],
    residuals: ([logTau, start], out) => {
      coolInto(trial, t, driver, Math.exp(logTau), start);
      for (let k = 0; k < cells.length; k++) out[k] = trial[cells[k]] - indoor[cells[k] + first];
    },
    count: cells.length,
  });
  if (fit.kind === 'not fitted' || Math.exp(fit.parameters[0]) > LONGEST)
    return { kind: 'not fitted', reason: 'no fall towards outdoors' };

  const tau = Math.exp(fit.parameters[0]);
  const fitted = freeCooling(t, driver, tau, fit.parameters[1]);
  const residuals = Float64Array.from(cells, (i) => fitted[i] - indoor[i + first]);
  const logSe = Math.max(LEAST_LOG_SE, Math.sqrt(fit.covariance[0][0] * inflationOf(residuals)));
  const curve = new Float64Array(time.length).fill(Number.NaN);
  curve.set(fitted, first);
  return {
    kind: 'fitted',
    timeConstant: logInterval(tau, logSe),
    logSe,
    curve,
    rms: Math.sqrt(mean(Array.from(residuals, (r) => r * r))),
    readings: cells.length,
  };
}

/** Residuals that are all the same have no autocorrelation to allow for. */
function inflationOf(residuals: Float64Array): number {
  const correlation = lag1Autocorrelation(residuals);
  return Number.isNaN(correlation) ? 1 : varianceInflation(correlation);
}

const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
