/** How few hits chance alone allows. */

/** The fewest hits of n at this share that are not rarer than one in a hundred (binomial). */
export function fewestHits(n: number, share = 0.95): number {
  let below = 0;
  let term = (1 - share) ** n; // of exactly k hits
  for (let k = 0; k <= n; k++) {
    below += term;
    if (below > 0.01) return k;
    term *= (((n - k) / (k + 1)) * share) / (1 - share);
  }
  return n;
}
