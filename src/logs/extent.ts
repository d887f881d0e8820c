/** The smallest and the largest of the values that are there; infinities the other way round where none is. */
export function extentOf(values: Float64Array): { readonly least: number; readonly most: number } {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    if (values[i] < least) least = values[i];
    if (values[i] > most) most = values[i];
  }
  return { least, most };
}
