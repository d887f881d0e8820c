/** Where the inside temperature turned up again, though nothing should have warmed it. */

export interface Rise {
  /** The highest cell. */
  readonly at: number;
  /** [K] */
  readonly size: number;
}

/**
 * Every rise of more than `least` between two falls of more than `least`, and one that still goes on at the end.
 *
 * @param values [°C], NaN where missing
 * @param least  [K]
 */
export function risesOf(values: Float64Array, from: number, to: number, least: number): Rise[] {
  const rises: Rise[] = [];
  let low = Number.POSITIVE_INFINITY;
  let high = from;
  let rising = false;
  for (let i = Math.max(0, from); i <= Math.min(to, values.length - 1); i++) {
    const value = values[i];
    if (Number.isNaN(value)) continue;
    if (!rising) {
      low = Math.min(low, value);
      if (value - low <= least) continue;
      rising = true;
      high = i;
    }
    if (value > values[high]) high = i;
    if (values[high] - value <= least) continue;
    rises.push({ at: high, size: values[high] - low });
    rising = false;
    low = value;
  }
  if (rising) rises.push({ at: high, size: values[high] - low });
  return rises;
}
