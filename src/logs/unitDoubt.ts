/** Units in doubt, which are asked and not silently changed. */
import { quantile } from 'simple-statistics';
import type { Column } from './column.ts';
import { namesHotThing } from './names.ts';
import type { Role } from './role.ts';
import { type Unit, unitNamed } from './units.ts';

/** A header that says °C: nearly all readings above 45 and half of them above 55: unbearable in °C, usual in °F. */
export function couldBeFahrenheitOnly({ name, numbers }: Column, unit: Unit): boolean {
  if (unit !== unitNamed('C') || namesHotThing(name) || numbers.length === 0) return false;
  const [low, middle, high] = [0.05, 0.5, 0.95].map((share) => quantile([...numbers], share));
  return low > 45 && middle > 55 && high < 130;
}

/** Power in a unit that nothing names, and so small that it may be kW: what warms a house has hundreds of watts. */
export const couldBeKilowatts = ({ quantity, unitStated, column: { numbers } }: Role): boolean =>
  quantity === 'power' &&
  !unitStated &&
  numbers.some((number) => number !== 0) &&
  numbers.every((number) => Math.abs(number) < SMALL_POWER);

const SMALL_POWER = 20;
