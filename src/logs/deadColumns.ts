/** Columns that no sensor is behind: nothing but zeros where another column of their quantity has readings. */
import type { Role } from './role.ts';
import { toSI } from './units.ts';

/** @param values per role one value per row in SI; NaN where there is none */
export function deadColumns(roles: readonly Role[], values: readonly Float64Array[]): ReadonlySet<Role> {
  const zeros = roles.filter((role, c) => isAllZero(values[c], toSI(0, role.unit)));
  const alive = (quantity: Role['quantity']) =>
    roles.some((role) => role.quantity === quantity && !zeros.includes(role));
  return new Set(zeros.filter(({ quantity }) => alive(quantity)));
}

const isAllZero = (values: Float64Array, zero: number): boolean =>
  values.includes(zero) && values.every((value) => value === zero || Number.isNaN(value));
