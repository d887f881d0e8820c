/** The values that are there. */
export function known(values: Float64Array): Float64Array {
  const kept = new Float64Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i])) kept[count++] = values[i];
  return kept.subarray(0, count);
}
