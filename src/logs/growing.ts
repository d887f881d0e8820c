/** Arrays of numbers that grow as rows come in, twice as long whenever they are full. */

type Numbers = Float64Array | Int32Array | Int16Array | Uint8Array;

/** The same numbers in an array of a length; a shorter one is a view of the first. */
export function resized<T extends Numbers>(array: T, length: number): T {
  if (length <= array.length) return array.subarray(0, length) as T;
  const longer = new (array.constructor as new (length: number) => T)(length);
  longer.set(array);
  return longer;
}
