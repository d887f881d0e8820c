/** How warm an element is from face to face, where well ventilated layers are as cold as outdoors. */
import { temperaturesThrough, type Workings } from '../../src/fabric/index.ts';

/** @returns one more than there are layers [°C] */
export function boundaryTemperatures(
  { cases, layers }: Workings,
  inside: number,
  outside: number,
): readonly number[] {
  const { mean } = temperaturesThrough(cases[0], inside, outside);
  return Array.from({ length: layers.length + 1 }, (_, i) => mean[i] ?? outside);
}

/** Of a layer as a whole, its timbers beside it [m²K/W]. */
export function layerResistance({ layers, cases }: Workings, at: number): number {
  const { clear, bridge } = layers[at];
  const blended = cases[0].layers[at];
  return blended ?? clear ?? bridge?.resistance ?? 0;
}
