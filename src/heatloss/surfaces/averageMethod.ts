/** The average method of ISO 9869-1: sums of heat over sums of temperature difference, and when to believe them. */

/** Means over one night or one day. */
export interface Block {
  /** Heat into the inside face [W/m²]. */
  readonly heatFlux: number;
  /** Air inside less air on the far side [K]. */
  readonly difference: number;
  /** Of the element, half way between its faces [°C]. */
  readonly elementTemperature: number;
  /** [s] */
  readonly duration: number;
}

/** The rules by which a test may end. */
export type AcceptanceRule =
  /** At least 72 hours. */
  | 'duration'
  /** The resistance at the end is within 5 % of that 24 hours before. */
  | 'last-day'
  /** That of the first two thirds is within 5 % of that of the last two thirds. */
  | 'two-thirds'
  /** What the element stored or gave up is less than 5 % of the heat that went through it. */
  | 'storage';

export interface Averaged {
  /** Σq / Σ(Ti − Te) [W/(m²K)] */
  readonly transmittance: number;
  /** Empty when all rules are kept. */
  readonly failed: readonly AcceptanceRule[];
}

/** One block a day: three of them are 72 hours. */
const FEWEST_BLOCKS = 3;
const WITHIN = 0.05;

/**
 * @param blocks   one for each day, in the order of time; at least one
 * @param capacity of the element, all of it [J/(m²K)]; null where it is not known or, light as it is, need not be, and
 *                 then what it stored is not judged
 * @see ISO 9869-1:2014, 7.1 (from memory)
 */
export function averageMethod(blocks: readonly Block[], capacity: number | null): Averaged {
  const failed: AcceptanceRule[] = [];
  const days = blocks.length;
  if (days < FEWEST_BLOCKS) failed.push('duration');
  if (days < 2 || !close(blocks, blocks.slice(0, -1))) failed.push('last-day');
  const most = Math.floor((2 * days) / 3);
  if (most < 1 || !close(blocks.slice(0, most), blocks.slice(-most))) failed.push('two-thirds');
  if (capacity !== null && storedShare(blocks, capacity) > WITHIN) failed.push('storage');
  return { transmittance: quotient(blocks), failed };
}

/** The transmittance of the sums; the longer the test, the less the heat that the element stores tells in it. */
function quotient(blocks: readonly Block[]): number {
  const sum = (of: (block: Block) => number) => blocks.reduce((all, block) => all + of(block), 0);
  return sum(({ heatFlux }) => heatFlux) / sum(({ difference }) => difference);
}

/** Their resistances, which are the inverse, within 5 % of each other. */
const close = (some: readonly Block[], others: readonly Block[]) =>
  Math.abs(quotient(others) / quotient(some) - 1) <= WITHIN;

/** What the element stored from the first block to the last, over the heat that went through it [–]. */
function storedShare(blocks: readonly Block[], capacity: number): number {
  const [first, last] = [blocks[0], blocks[blocks.length - 1]];
  const stored = capacity * (last.elementTemperature - first.elementTemperature);
  const through = blocks.reduce((sum, { heatFlux, duration }) => sum + heatFlux * duration, 0);
  return Math.abs(stored / through);
}
