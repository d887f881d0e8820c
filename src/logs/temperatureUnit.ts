/** °C, °F or K for the temperatures whose unit neither header nor cells state: one answer for the whole file. */
import { median } from 'simple-statistics';
import type { Role } from './role.ts';
import { measureOf, unitNamed } from './units.ts';

export interface TemperatureUnits {
  readonly roles: readonly Role[];
  /** The unit taken by the range of the values alone, where that was not obvious; null otherwise. */
  readonly guessed: 'F' | 'K' | null;
}

/** By the preamble, else by range: °C unless the readings are beyond any house's. */
export function withTemperatureUnit(roles: readonly Role[], preamble: readonly string[]): TemperatureUnits {
  const open = roles.filter(
    ({ quantity, unitStated }) => measureOf[quantity] === 'temperature' && !unitStated,
  );
  if (open.length === 0) return { roles, guessed: null };
  const said = unitInPreamble(preamble);
  const letter = said ?? unitByRange(open);
  const unit = unitNamed(letter);
  const guessed = said === null && letter !== 'C' ? letter : null;
  const unitStated = said !== null;
  return {
    roles: roles.map((role) => (unit && open.includes(role) ? { ...role, unit, unitStated } : role)),
    guessed,
  };
}

/** The one scale that the preamble speaks of, as in "Temperature unit: °F"; null when none or several. */
function unitInPreamble(lines: readonly string[]): 'C' | 'F' | 'K' | null {
  const scales = (['C', 'F', 'K'] as const).filter((scale) => lines.some((line) => SPOKEN[scale].test(line)));
  const [only] = scales;
  return scales.length === 1 && only !== undefined ? only : null;
}

const SPOKEN = {
  C: /[°º]\s?C\b|℃|\bcelsius\b|\bunits?\b\W+(deg\W*)?C\b/i,
  F: /[°º]\s?F\b|℉|\bfahrenheit\b|\bunits?\b\W+(deg\W*)?F\b/i,
  K: /\bkelvin\b|\bunits?\b\W+K\b/i,
} as const;

/** Half of a column's readings above 60 cannot be °C in or at a house. */
function unitByRange(roles: readonly Role[]): 'C' | 'F' | 'K' {
  const usual = roles.map(({ column }) => median([...column.numbers]));
  if (usual.every((value) => value > 220 && value < 340)) return 'K';
  return usual.some((value) => value > 60) && usual.every((value) => value < 140) ? 'F' : 'C';
}
