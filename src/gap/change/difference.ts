/** The ratio of two stages in W/K: the level of both and the ratio are doubted apart, and neither stage twice. */
import jStat from 'jstat';
import type { Estimate } from '../../assessment.ts';
import { logSdOf } from '../../maths/logInterval.ts';
import { studentTQuantile } from '../../maths/studentT.ts';

/**
 * Heat loss after less that before [W/K]: negative where the house loses less.
 *
 * The two stages' heat losses are off together (the same mass, loggers and drawing), so their intervals say little
 * of the difference. It is 2·G·sinh(l/2) instead, with l the logarithm of the ratio and G the level half-way
 * between the stages: the geometric mean of both headlines, or the one there is carried half-way. G is as unsure as
 * the headlines are on average. The 95 % interval is that of the product, so it leaves out 0 exactly when the
 * ratio's leaves out 1, and swapping the stages turns its sign.
 *
 * @param ratio  heat loss after / before
 * @param before [W/K]; null where the stage has no figure
 * @returns null where neither has
 */
export function heatLossDifference(
  ratio: Estimate,
  before: Estimate | null,
  after: Estimate | null,
): Estimate | null {
  const level = levelOf(ratio, before, after);
  if (level === null) return null;
  const log = { value: Math.log(ratio.value), sd: logSdOf(ratio) };
  return {
    value: 2 * level.value * Math.sinh(log.value / 2),
    low: quantile(0.025, level, log),
    high: quantile(0.975, level, log),
  };
}

interface Doubted {
  readonly value: number;
  readonly sd: number;
}

/** Half-way between both on the logarithm [W/K], with the standard deviation of its logarithm. */
function levelOf(
  { value: ratio }: Estimate,
  before: Estimate | null,
  after: Estimate | null,
): Doubted | null {
  const halfWay = [
    before && { value: before.value * Math.sqrt(ratio), sd: logSdOf(before) },
    after && { value: after.value / Math.sqrt(ratio), sd: logSdOf(after) },
  ].filter((it) => it !== null);
  if (halfWay.length === 0) return null;
  const mean = (of: (it: Doubted) => number) => halfWay.reduce((sum, it) => sum + of(it), 0) / halfWay.length;
  return { value: Math.exp(mean((it) => Math.log(it.value))), sd: mean((it) => it.sd) };
}

/** The level is gone through at so many places of equal weight. */
const PLACES = 200;
const places = Array.from({ length: PLACES }, (_, i) =>
  studentTQuantile((i + 0.5) / PLACES, Number.POSITIVE_INFINITY),
);
const HALVINGS = 60;

/** The difference below which the given share lies, by halving. */
function quantile(share: number, level: Doubted, log: Doubted): number {
  const levels = places.map((z) => level.value * Math.exp(level.sd * z));
  const below = (difference: number) =>
    levels.reduce((sum, it) => sum + normal((2 * Math.asinh(difference / it / 2) - log.value) / log.sd), 0) /
    PLACES;
  let high = level.value;
  while (below(high) < share || below(-high) > share) high *= 2;
  let low = -high;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (below(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The share of the normal distribution below z: its square has a chi-square distribution. */
const normal = (z: number): number => (1 + Math.sign(z) * jStat.chisquare.cdf(z * z, 1)) / 2;
