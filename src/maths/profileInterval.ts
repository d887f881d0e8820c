/** An interval by how much worse the best fit becomes when one parameter is held away from its best. */

/** The 95 % point of chi-square with one degree of freedom. */
const RISE = 3.841458820694124;
const MOST_TRIALS = 6;
/** Of the signed root of the rise: a fiftieth of a standard deviation. */
const CLOSE = 0.02;

/**
 * One end of the 95 % profile-likelihood interval: the value at which −2 ln likelihood, at its best over all other
 * parameters, has risen by 3.84. By secants on the root of the rise, which is straight where the likelihood is normal.
 *
 * @param best    the value of the least objective
 * @param reach   a first guess of the distance, with its sign
 * @param riseAt  how far the best objective with the parameter held at a value lies above the least; Infinity where
 *                that value is barred
 * @returns the last value tried where six do not come close
 * @see Venzon and Moolgavkar, Appl. Stat. 37 (1988) 87, doi:10.2307/2347496
 */
export function profileEnd(best: number, reach: number, riseAt: (value: number) => number): number {
  const target = Math.sqrt(RISE);
  let [below, rootBelow] = [0, 0];
  let distance = reach;
  for (let trial = 0; trial < MOST_TRIALS; trial++) {
    const root = Math.sqrt(Math.max(0, riseAt(best + distance)));
    if (Math.abs(root - target) < CLOSE) break;
    if (root === Number.POSITIVE_INFINITY) {
      distance = (below + distance) / 2;
      continue;
    }
    const slope = (root - rootBelow) / (distance - below);
    const next = distance + (target - root) / slope;
    [below, rootBelow] = [distance, root];
    // No further than three times as far at once, and never past the best to the other side.
    const ratio = Number.isFinite(next) ? next / distance : 3;
    distance *= Math.min(3, Math.max(0.2, ratio));
  }
  return best + distance;
}
