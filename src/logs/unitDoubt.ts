/** A header that says °C over values that no air in or at a house has in °C: asked, not silently changed. */
import { quantile } from 'simple-statistics';
import type { Column } from './column.ts';
import { namesHotThing } from './names.ts';
import { type Unit, unitNamed } from './units.ts';

/** Nearly all readings above 45 and half of them above 55: unbearable in °C, usual in °F. */
export function couldBeFahrenheitOnly({ name, numbers }: Column, unit: Unit): boolean {
  if (unit !== unitNamed('C') || namesHotThing(name) || numbers.length === 0) return false;
  const [low, middle, high] = [0.05, 0.5, 0.95].map((share) => quantile([...numbers], share));
  return low > 45 && middle > 55 && high < 130;
}
