/** Which column holds what: by what the house says, else by header, unit and range of values together. */
import type { Quantity } from '../assessment.ts';
import type { Column } from './column.ts';
import type { LogHints } from './log.ts';
import { findHeader, isDerived, namesOtherShare, quantityNamed } from './names.ts';
import { mostlyPlausible } from './plausible.ts';
import { isCounter, type Role, roleIn } from './role.ts';
import { rolesByRange } from './rolesByRange.ts';
import { type Measure, measureOf, toSI } from './units.ts';

/**
 * The role of each column that has one, from left to right. A quantity for which the house names a column is
 * found there and nowhere else; the others are guessed.
 */
export function rolesOf(columns: readonly Column[], names: readonly string[], hints: LogHints): Role[] {
  const named = namedRoles(columns, names, hints);
  const isFree = (roles: readonly Role[]) => (column: Column) =>
    !roles.some((role) => role.column === column);
  const isOpen = ({ quantity }: Role) => !named.some((role) => role.quantity === quantity);
  const guessed = columns.filter(isFree(named)).flatMap((column) => guess(column, hints) ?? []);
  const said = asExpected([...named, ...withoutDerived(guessed.filter(isOpen))], columns, hints);
  const wantsTemperature = (hints.expected ?? 'temperature') === 'temperature';
  const complete = !wantsTemperature || said.some(({ quantity }) => quantity === 'temperature');
  const ranged = complete ? [] : rolesByRange(columns.filter(isFree(said)), hints);
  return [...said, ...ranged].sort((a, b) => a.column.at - b.column.at);
}

function namedRoles(columns: readonly Column[], names: readonly string[], hints: LogHints): Role[] {
  return Object.entries(hints.columns).flatMap(([key, wanted]) => {
    const column = columns.find(({ at }) => at === findHeader(names, wanted));
    return key === 'time' || key === 'date' || column === undefined
      ? []
      : [roleIn(column, key as Quantity, hints)];
  });
}

/** What header and unit say, where the values can be that; null when they say nothing. */
function guess(column: Column, hints: LogHints): Role | null {
  const said = column.hasHeader ? quantityNamed(column.name) : undefined;
  if (said === null) return null;
  const quantity = quantityOf(column, said, hints);
  if (quantity === undefined) return null;
  const role = roleIn(column, quantity, hints);
  const values = column.numbers.map((number) => toSI(number, role.unit));
  return mostlyPlausible(quantity, values) ? role : null;
}

/** The quantity that the header names, unless the unit stated for it belongs to another. */
function quantityOf(column: Column, said: Quantity | undefined, hints: LogHints): Quantity | undefined {
  const stated = column.units.filter(({ sure }) => sure).map(({ unit }) => unit.measures);
  const contradicted = said === undefined || (stated.length > 0 && !stated.includes(measureOf[said]));
  const byUnit = stated.flatMap((measure) => {
    if (measure === 'humidity' && namesOtherShare(column.name)) return [];
    if (measure === 'volume' && hints.energyPerUnit === undefined) return [];
    return QUANTITY_OF[measure] ?? [];
  })[0];
  const quantity = contradicted ? (byUnit ?? said) : said;
  if (quantity !== 'energy' && quantity !== 'meter') return quantity;
  if (hints.expected === 'energy' || hints.expected === 'meter') return hints.expected;
  return quantity === 'energy' && keepsRising(column.numbers) ? 'meter' : quantity;
}

const QUANTITY_OF: Readonly<Record<Measure, Quantity | null>> = {
  temperature: 'temperature',
  humidity: 'humidity',
  vapour: 'absoluteHumidity',
  speed: 'windSpeed',
  irradiance: 'irradiance',
  power: 'power',
  energy: 'energy',
  volume: 'meter',
  pressure: 'pressure',
  share: 'carbonDioxide',
  voltage: 'voltage',
  other: null,
};

/** A running meter rather than energy per interval: over enough rows it never turns. */
function keepsRising(numbers: readonly number[]): boolean {
  const steps = numbers.slice(1).map((number, i) => number - numbers[i]);
  const oneWay = steps.every((step) => step >= 0) || steps.every((step) => step <= 0);
  return oneWay && numbers.length >= 8 && steps.some((step) => step !== 0);
}

/** "Temp max" beside "Temp" is no reading of its own. */
const withoutDerived = (roles: readonly Role[]): Role[] =>
  roles.filter(
    ({ column, quantity }) =>
      !isDerived(column.name) ||
      !roles.some((other) => other.quantity === quantity && !isDerived(other.column.name)),
  );

/** Where the header leaves power, energy and meter open, the kind of file that the house states decides. */
function asExpected(roles: readonly Role[], columns: readonly Column[], hints: LogHints): Role[] {
  const { expected } = hints;
  if (expected === undefined || roles.some(({ quantity }) => quantity === expected)) return [...roles];
  const heat: readonly Quantity[] = ['power', 'energy', 'meter'];
  const open = roles.find(({ quantity, unitStated }) => heat.includes(quantity) && !unitStated);
  if (open !== undefined && heat.includes(expected))
    return roles.map((role) => (role === open ? roleIn(open.column, expected, hints) : role));
  const nameless = columns.filter(
    (column) =>
      !roles.some((role) => role.column === column) &&
      !(column.hasHeader && quantityNamed(column.name) === null),
  );
  const readings = nameless.filter(({ numbers }) => !isCounter(numbers));
  const [only, ...more] = readings.length > 0 ? readings : nameless;
  return only !== undefined && more.length === 0 ? [...roles, roleIn(only, expected, hints)] : [...roles];
}
