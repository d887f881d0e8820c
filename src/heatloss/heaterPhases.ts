/** Where in a night a heater warmed the house, and where it then cooled: the two phases of a heated night. */
import { mean, standardDeviation } from 'simple-statistics';
import { type Grid, indexAt } from '../series/grid.ts';
import { readOffByEye } from './readOffByEye.ts';

/** Cells of the grid, both ends included; both spans are of the same length. */
export interface HeaterPhases {
  readonly kind: 'two phases';
  readonly heating: { readonly first: number; readonly last: number };
  readonly cooling: { readonly first: number; readonly last: number };
  /** The cell in which the heater came on. */
  readonly switchedOn: number;
  /** Mean of the heater while it was on [W]. */
  readonly power: number;
}

export type NoPhases =
  /** Off and on again, as a thermostat does. */
  | 'heater-cycled'
  /** On throughout, but turned up or down. */
  | 'heater-uneven'
  | 'heater-on-too-short'
  /** Morning came, heat came on again, or the record ended too soon after it went off. */
  | 'cooling-too-short'
  /** Nobody knows whether it was on or off all through. */
  | 'heated-night-gap';

const ON = 50; // [W]
/** Air and linings settle after each switch; of each phase this much is passed over [s]. */
const SETTLING = 1.5 * 3600;
/** What is left of a phase then must be at least so long [s]. */
const SHORTEST = 2 * 3600;
/** The longest spell of a heater that was meant to be on holds at least this share of the heat. */
const LEAST_SHARE = 2 / 3;
/** Its hourly means stay this close to each other: relative standard deviation. */
const MOST_UNEVEN = 0.15;

/**
 * @param power   metered heat on the grid [W], NaN where not known
 * @param sunset  [s]
 * @param sunrise [s]
 */
export function heaterPhases(
  grid: Grid,
  power: Float64Array,
  sunset: number,
  sunrise: number,
): HeaterPhases | NoPhases {
  const dusk = Math.max(0, indexAt(grid, sunset - 4 * 3600));
  const dawn = Math.min(grid.length - 1, indexAt(grid, sunrise));
  const spells = spellsOf(power, dusk, dawn);
  const heat = (spell: Spell) => power.subarray(spell.first, spell.last + 1).reduce((sum, p) => sum + p, 0);
  const all = spells.reduce((sum, spell) => sum + heat(spell), 0);
  const longest = spells.toSorted((a, b) => b.last - b.first - (a.last - a.first))[0];
  if (longest === undefined) return 'heater-on-too-short';
  const { first, last } = longest;
  if (spells.length > 2 && heat(longest) < LEAST_SHARE * all) return 'heater-cycled';
  const cells = (duration: number) => Math.round(duration / grid.step);
  const settling = cells(SETTLING);
  if (last - first < settling + cells(SHORTEST)) return 'heater-on-too-short';
  const inner = power.subarray(first + 1, last);
  if (unevenness(inner, cells(3600)) > MOST_UNEVEN) return 'heater-uneven';
  const off = last + 1;
  const next = spells.find((spell) => spell.first > off);
  const coolUntil = Math.min(next === undefined ? dawn : next.first - 1, off + last - first);
  // Heat that is not known is no heater that is off, unless the spell was read off by eye.
  const gap = power.subarray(off, coolUntil + 1).some(Number.isNaN);
  if (gap && !readOffByEye(grid, power, { first, last, until: coolUntil })) return 'heated-night-gap';
  const span = Math.min(last - first, coolUntil - off) - settling;
  if (span < cells(SHORTEST)) return 'cooling-too-short';
  return {
    kind: 'two phases',
    heating: { first: last - span, last },
    cooling: { first: coolUntil - span, last: coolUntil },
    switchedOn: first,
    power: mean(Array.from(inner)),
  };
}

interface Spell {
  readonly first: number;
  readonly last: number;
}

/** The spells with the heater on. */
function spellsOf(power: Float64Array, from: number, to: number): Spell[] {
  const spells: Spell[] = [];
  let first = from;
  for (let i = from; i <= to + 1; i++) {
    if (i <= to && power[i] > ON) continue;
    if (i > first) spells.push({ first, last: i - 1 });
    first = i + 1;
  }
  return spells;
}

/** Relative standard deviation of the means over each hour: a meter's steps are no thermostat's. */
function unevenness(power: Float64Array, hour: number): number {
  const means = Array.from({ length: Math.floor(power.length / hour) }, (_, k) =>
    mean(Array.from(power.subarray(k * hour, (k + 1) * hour))),
  );
  return means.length < 2 ? 0 : standardDeviation(means) / mean(means);
}
