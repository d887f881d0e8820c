/** Whether a model leaves anything in its innovations that it should have foretold. */
import { ljungBox } from '../../maths/autocorrelation.ts';
import { cumulatedPeriodogram } from '../../maths/cumulatedPeriodogram.ts';
import type { StatesFit } from './fitStates.ts';
import type { Inputs } from './inputs.ts';

export interface Whiteness {
  /** Of as much correlation by chance, over the lags of half a day, by Ljung and Box's test. */
  readonly probability: number;
  /** The cumulated periodogram's largest distance from a straight line, over Kolmogorov's 95 % bound. */
  readonly rhythm: number;
  /** Neither test speaks against it. */
  readonly white: boolean;
}

const HALF_DAY = 43_200; // [s]
const SIGNIFICANT = 0.05;

/** Of the innovations after steps whose heat was known, each over its own deviation, gaps closed up. */
export function whitenessOf(
  { inside, unknown, step }: Inputs,
  { innovations, variances }: StatesFit,
): Whiteness {
  const observed = Array.from(inside.keys()).filter((t) => !Number.isNaN(inside[t]));
  const standardised = observed.flatMap((t, k) =>
    t > 0 && unknown[t - 1] === 1 ? [] : innovations[k] / Math.sqrt(variances[k]),
  );
  const { probability } = ljungBox(standardised, Math.round(HALF_DAY / step));
  const { distance, bound } = cumulatedPeriodogram(standardised);
  const rhythm = distance / bound;
  return { probability, rhythm, white: probability >= SIGNIFICANT && rhythm <= 1 };
}
