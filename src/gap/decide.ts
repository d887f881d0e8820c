/** What would decide it: the tests that a stage could still gain from, by the chance that each settles the verdict. */
import type { Estimate } from '../assessment.ts';
import type { FurtherTest, Outlook } from '../heatloss/index.ts';
import { logInterval, logSdOf, NORMAL_95 } from '../maths/logInterval.ts';
import { normalProbability } from '../maths/normal.ts';

export interface Candidate {
  readonly test: FurtherTest;
  /** Measured over designed with the interval that the test would leave, about today's figure. */
  readonly ratio: Estimate;
  /** How likely the interval would then be clear of what it straddles now [–, 0 to 1]. */
  readonly decides: number;
}

/** A test that leaves more than so much of the width is not worth its trouble [–]. */
const HARDLY_NARROWER = 0.97;

/**
 * Ranked: the likeliest to decide first, of those alike the one that leaves the narrowest interval.
 *
 * @param ratio     measured over designed today
 * @param allowance as `verdictOf` has it
 */
export function candidatesOf(outlooks: readonly Outlook[], ratio: Estimate, allowance: number): Candidate[] {
  const today = logSdOf(ratio);
  return outlooks
    .filter(({ logSd }) => logSd < HARDLY_NARROWER * today)
    .map(({ test, logSd }) => ({
      test,
      ratio: logInterval(ratio.value, logSd),
      decides: chanceToDecide(Math.log(ratio.value), today, logSd, Math.log(1 + allowance)),
    }))
    .sort((a, b) => b.decides - a.decides || logSdOf(a.ratio) - logSdOf(b.ratio));
}

/**
 * The figure that a test will give lies about today's with what the test takes away of the variance; it decides where
 * its interval ends below the allowance or begins above the drawing.
 *
 * @param logRatio today's [–], its standard deviation, the one that would be left, and ln(1 + allowance)
 * @see Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961 (preposterior analysis)
 */
function chanceToDecide(logRatio: number, today: number, left: number, logAllowance: number): number {
  const moves = Math.sqrt(Math.max(0, today ** 2 - left ** 2));
  const meets = logAllowance - NORMAL_95 * left;
  const exceeds = NORMAL_95 * left;
  if (meets >= exceeds) return 1;
  if (moves === 0) return logRatio <= meets || logRatio > exceeds ? 1 : 0;
  const below = (bound: number) => normalProbability((bound - logRatio) / moves);
  return below(meets) + 1 - below(exceeds);
}
