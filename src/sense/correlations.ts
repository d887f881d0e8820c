/** How alike two series are when one is moved against the other, block by block. */

/** Of a long record so many blocks, spread over it, are enough. */
const MOST_BLOCKS = 45;

/** The correlations of each block that has them, of a long record of some spread over it. */
export function blocksOf(x: Float64Array, y: Float64Array, length: number, reach: number): Float64Array[] {
  const count = Math.floor(x.length / length);
  const stride = Math.max(1, Math.ceil(count / MOST_BLOCKS));
  const blocks: Float64Array[] = [];
  for (let k = 0; k < count; k += stride) {
    const own = correlations(x, y, k * length, (k + 1) * length, reach);
    if (Number.isFinite(own[peakOf(own)])) blocks.push(own);
  }
  return blocks;
}

/** At each lag the mean of the blocks that have it. */
export function meanOf(blocks: readonly Float64Array[]): Float64Array {
  return blocks[0].map((_, lag) => {
    const own = blocks.map((it) => it[lag]).filter(Number.isFinite);
    return own.length < blocks.length / 2 ? Number.NaN : own.reduce((sum, it) => sum + it, 0) / own.length;
  });
}

/** Correlation of x in its cells `from` to `to` with y that many cells later, from -reach to reach. */
function correlations(
  x: Float64Array,
  y: Float64Array,
  from: number,
  to: number,
  reach: number,
): Float64Array {
  return new Float64Array(2 * reach + 1).map((_, k) => correlation(x, y, from, to, k - reach));
}

function correlation(x: Float64Array, y: Float64Array, from: number, to: number, lag: number): number {
  let n = 0;
  let sx = 0;
  let sy = 0;
  let sxx = 0;
  let syy = 0;
  let sxy = 0;
  const end = Math.min(to, y.length - lag);
  for (let i = Math.max(from, -lag); i < end; i++) {
    const a = x[i];
    const b = y[i + lag];
    if (Number.isNaN(a) || Number.isNaN(b)) continue;
    n++;
    sx += a;
    sy += b;
    sxx += a * a;
    syy += b * b;
    sxy += a * b;
  }
  const spread = Math.sqrt((sxx - (sx * sx) / n) * (syy - (sy * sy) / n));
  return n < (to - from) / 4 ? Number.NaN : (sxy - (sx * sy) / n) / spread;
}

/** Place of the largest that is a number; 0 without one. */
export function peakOf(values: Float64Array): number {
  let peak = 0;
  for (let i = 1; i < values.length; i++)
    if (!(values[peak] >= values[i]) && !Number.isNaN(values[i])) peak = i;
  return peak;
}

/** Where a parabola through the peak and its neighbours is highest. */
export function summit(values: Float64Array, peak: number): number {
  const [before, top, after] = [values[peak - 1], values[peak], values[peak + 1]];
  const bend = before - 2 * top + after;
  const aside = (before - after) / (2 * bend);
  return Math.abs(aside) <= 1 ? peak + aside : peak;
}
