/** A column in a part: the quantity it holds and the unit it is in. */
import type { Quantity } from '../assessment.ts';
import type { Column } from './column.ts';
import type { LogHints } from './log.ts';
import { mostlyPlausible } from './plausible.ts';
import { couldBeFahrenheitOnly } from './unitDoubt.ts';
import { measureOf, toSI, type Unit, unitNamed, usualUnits } from './units.ts';

export interface Role {
  readonly column: Column;
  readonly quantity: Quantity;
  readonly unit: Unit;
  /** The file or the house states the unit; otherwise it is the usual one. */
  readonly unitStated: boolean;
  /** Only the range of the values speaks for the quantity. */
  readonly byRange: boolean;
}

/** A column as a quantity, in the unit that is stated for it, else in the usual one that its values fit. */
export function roleIn(column: Column, quantity: Quantity, hints: LogHints): Role {
  const role = { column, quantity, byRange: false };
  if (hints.energyPerUnit !== undefined && (quantity === 'meter' || quantity === 'energy'))
    return { ...role, unit: { measures: 'energy', scale: hints.energyPerUnit, shift: 0 }, unitStated: true };
  const fits = (unit: Unit) =>
    mostlyPlausible(
      quantity,
      column.numbers.map((number) => toSI(number, unit)),
    );
  const answer = measureOf[quantity] === 'temperature' ? unitNamed(hints.temperatureUnit ?? '') : undefined;
  const stated = column.units.find(
    ({ unit, sure }) =>
      unit.measures === measureOf[quantity] &&
      fits(unit) &&
      // what the house answers to a doubt goes before a header that is in doubt
      (answer === undefined || (sure && !couldBeFahrenheitOnly(column, unit))),
  );
  const [usual, ...others] = usualUnits(quantity);
  // a humidity that never passes 1 is a fraction, whatever its header says
  if (quantity === 'humidity' && others[0] && column.numbers.every((number) => number <= 1))
    return { ...role, unit: others[0], unitStated: true };
  const known = stated?.unit ?? answer;
  if (known !== undefined) return { ...role, unit: known, unitStated: true };
  const unit = [usual, ...others].find((it) => it !== undefined && fits(it)) ?? usual;
  if (unit === undefined) throw new RangeError(`${quantity} has no usual unit`);
  return { ...role, unit, unitStated: false };
}

/** Sample numbers, as many logs count their rows. */
export const isCounter = (numbers: readonly number[]): boolean =>
  (numbers.length >= 8 || numbers[0] === 0 || numbers[0] === 1) &&
  numbers.length > 2 &&
  numbers.every((number, i) => Number.isInteger(number) && (i === 0 || number > numbers[i - 1]));
