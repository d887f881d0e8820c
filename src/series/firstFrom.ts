/** The place of the first instant at or after another, of those that rise; how many there are where none is. */
export function firstFrom(time: Float64Array, instant: number): number {
  let before = -1;
  let found = time.length;
  while (found - before > 1) {
    const middle = (before + found) >> 1;
    if (time[middle] < instant) before = middle;
    else found = middle;
  }
  return found;
}
