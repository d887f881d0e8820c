/** How many nights of a plan are not there yet. */

/** "2 before, 3 after" */
export function stillNeeded(nights: number, before: number, after: number): string {
  const sides = [
    [nights - before, 'before'],
    [nights - after, 'after'],
  ] as const;
  const missing = sides.filter(([more]) => more > 0).map(([more, side]) => `${more} ${side}`);
  return missing.length === 0 ? 'none' : missing.join(', ');
}
