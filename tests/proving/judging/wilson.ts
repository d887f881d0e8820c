/** How sure a share is that was counted. */

/**
 * 95 % interval of a share.
 *
 * @see E. B. Wilson, Probable inference, the law of succession, and statistical inference, Journal of the American
 *      Statistical Association 22 (1927) 209-212
 */
export function wilson(hits: number, of: number): { readonly low: number; readonly high: number } {
  const z = 1.959964;
  const share = hits / of;
  const middle = share + z ** 2 / (2 * of);
  const half = z * Math.sqrt((share * (1 - share)) / of + z ** 2 / (4 * of ** 2));
  const scale = 1 + z ** 2 / of;
  return { low: (middle - half) / scale, high: (middle + half) / scale };
}
