/** Columns without a telling header, judged by their values alone: rooms' names over temperatures, or no header. */
import { median } from 'simple-statistics';
import type { Column } from './column.ts';
import type { LogHints } from './log.ts';
import { namesEvent, quantityNamed } from './names.ts';
import { isCounter, type Role, roleIn } from './role.ts';
import { toSI, usualUnits } from './units.ts';

/** The columns that may be temperatures; without any header the next one after it may be humidity. */
export function rolesByRange(columns: readonly Column[], hints: LogHints): Role[] {
  const roles: Role[] = [];
  for (const column of columns) {
    const named = column.hasHeader && quantityNamed(column.name) !== undefined;
    const stated = column.units.some(({ sure }) => sure);
    if (named || stated || isCounter(column.numbers) || isFlag(column)) continue;
    const before = roles.at(-1);
    const warmth = before && before.quantity === 'temperature' ? middle(before) : null;
    const wet = roleIn(column, 'humidity', hints);
    if (!column.hasHeader && warmth !== null && isHumidityBeside(warmth, wet))
      roles.push({ ...wet, byRange: true });
    else {
      const warm = roleIn(column, 'temperature', hints);
      const usual = middle(warm);
      // a nameless 290 may be anything, not only kelvins
      const inCelsius = warm.unitStated || warm.unit === usualUnits('temperature')[0];
      if (inCelsius && usual > COLDEST && usual < WARMEST) roles.push({ ...warm, byRange: true });
    }
  }
  return roles;
}

/** Ones and zeros, or a header that says so: something that happened. */
const isFlag = ({ numbers, name, hasHeader }: Column) =>
  (hasHeader && namesEvent(name)) || numbers.every((number) => number === 0 || number === 1);

const middle = ({ column, unit }: Role) => median(column.numbers.map((number) => toSI(number, unit)));

/** Half of the readings of a logger in or at a house lie between these [°C]. */
const COLDEST = -30;
const WARMEST = 38;

/** Percentages well above the temperature beside them. */
function isHumidityBeside(temperature: number, humidity: Role): boolean {
  const numbers = humidity.column.numbers;
  const usual = 100 * middle(humidity);
  return numbers.every((number) => number >= 0 && number <= 100) && usual > temperature + 8;
}
