/** What speaks for a column's quantity, and how surely: for a person to see and to change. */
import type { Quantity } from '../assessment.ts';
import { type Column, namesOf } from './column.ts';
import type { Frame } from './frame.ts';
import type { LogHints } from './log.ts';
import { findHeader, isDerived, namesEvent, quantityNamed } from './names.ts';
import { isCounter, type Role } from './role.ts';
import type { NotRead, UnderstoodColumn } from './understood.ts';
import { measureOf, nameOfUnit } from './units.ts';

/** Every column of the file from left to right, those that are not read as well. */
export function understoodColumns(
  { headers }: Frame,
  columns: readonly Column[],
  roles: readonly Role[],
  times: readonly number[],
  sample: readonly (readonly string[])[],
  hints: LogHints,
): UnderstoodColumn[] {
  const names = namesOf(headers);
  return names.map((name, at) => {
    const role = roles.find(({ column }) => column.at === at);
    if (role !== undefined) return asRead(role, names, hints);
    const numbers = columns.find((column) => column.at === at)?.numbers;
    const isEmpty = sample.every((row) => (row[at] ?? '') === '');
    const notRead = times.includes(at) ? 'time' : isEmpty ? 'empty' : whatElse(name, headers[at], numbers);
    return {
      column: name,
      quantity: null,
      notRead,
      unit: null,
      unitStated: false,
      because: [],
      confidence: null,
    };
  });
}

function asRead(role: Role, names: readonly string[], hints: LogHints): UnderstoodColumn {
  const because = reasons(role, names, hints);
  const [strongest] = because;
  const twice = because.includes('the header') && because.includes('the unit');
  // a humidity is told by its range to be a percentage or a fraction; nothing else has a unit that goes without saying
  const unitOpen = !role.unitStated && role.quantity !== 'humidity';
  const certain = !unitOpen && (strongest === 'the house' || twice);
  return {
    column: role.column.name,
    quantity: role.quantity,
    notRead: null,
    unit: nameOfUnit(role.unit),
    unitStated: role.unitStated,
    because,
    confidence: certain ? 'certain' : strongest === 'the values' ? 'guessed' : 'likely',
  };
}

function reasons({ column, quantity, byRange }: Role, names: readonly string[], hints: LogHints) {
  const because: UnderstoodColumn['because'][number][] = [];
  const wanted = hints.columns[quantity];
  const named = wanted !== undefined && findHeader(names, wanted) === column.at;
  if (named || hints.expected === quantity) because.push('the house');
  const said = column.hasHeader ? quantityNamed(column.name) : undefined;
  if (said === quantity || (said && HEAT.includes(said) && HEAT.includes(quantity)))
    because.push('the header');
  const measuring = column.units.filter(({ unit }) => unit.measures === measureOf[quantity]);
  // a last word that may be a unit is one where the header says the same
  if (measuring.some(({ sure }) => sure || because.includes('the header'))) because.push('the unit');
  if (byRange || because.length === 0) because.push('the values');
  return because;
}

const HEAT: readonly Quantity[] = ['power', 'energy', 'meter'];

function whatElse(name: string, header: string, numbers: readonly number[] | undefined): NotRead {
  if (header !== '' && namesEvent(name)) return 'event';
  if (numbers === undefined) return 'text';
  if (isDerived(name)) return 'statistic';
  if (isCounter(numbers)) return 'counter';
  return numbers.every((number) => number === 0 || number === 1) ? 'event' : 'unknown';
}
