/** Surface resistances. */
import type { HeatFlow } from '../house.ts';

/** [m²K/W] */
export interface Surfaces {
  readonly inside: number;
  readonly outside: number;
}

export type Beyond = 'outside' | 'ground' | 'adjacent' | 'void';

/** Rsi [m²K/W] by the way heat flows; "across" reaches 30° either side. ISO 6946:2017, Table 7; MEMORY. */
const insideResistance = { up: 0.1, across: 0.13, down: 0.17 } as const;
/** Rse [m²K/W], any direction. ISO 6946:2017, Table 7; READ second-hand. */
const outsideResistance = 0.04;

/**
 * Both surface resistances of an element [m²K/W]. Towards still air (a void, a neighbour) the inside value
 * holds on both faces.
 *
 * @see ISO 6946:2017, 6.8 and Table 7
 */
export function surfacesOf(facing: HeatFlow, beyond: Beyond): Surfaces {
  const inside = insideResistance[facing];
  const still = beyond === 'void' || beyond === 'adjacent';
  return { inside, outside: still ? inside : outsideResistance };
}
