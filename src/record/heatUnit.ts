/** A unit of heat that cannot be right, told from what the house can lose: asked, never silently changed. */
import { quantileSorted } from 'simple-statistics';
import { designOf } from '../fabric/index.ts';
import type { HeatEntry, House } from '../house.ts';

/** Units of power and of energy in SI. */
const UNITS = {
  W: 1,
  kW: 1e3,
  MW: 1e6,
  Wh: 3.6e3,
  kWh: 3.6e6,
  MWh: 3.6e9,
  J: 1,
  kJ: 1e3,
  MJ: 1e6,
  GJ: 1e9,
} as const;
export type HeatUnit = keyof typeof UNITS;

/** Those that are taken for one another, each a thousand times the one before; the house can answer with any. */
const LADDERS: readonly (readonly HeatUnit[])[] = [
  ['W', 'kW'],
  ['Wh', 'kWh', 'MWh'],
];

export interface HeatUnitDoubt {
  /** As the file was read, or as house.json says against the file. */
  readonly read: HeatUnit;
  readonly stated: boolean;
  readonly likelier: HeatUnit;
  /** What the strongest hours come to as read [W], and what the house loses in the cold [W]. */
  readonly strongest: number;
  readonly expected: number;
}

const isHeatUnit = (name: string | null | undefined): name is HeatUnit =>
  name !== null && name !== undefined && name in UNITS;

/** What readings are to be multiplied with where the house says another unit than the one they were read in. */
export function unitAnswered({ unit }: HeatEntry, read: string | null): number {
  return isHeatUnit(unit) && isHeatUnit(read) ? UNITS[unit] / UNITS[read] : 1;
}

/** Of a house that is known by its floor alone: from a new one to a bare old one about half or double [W/(m²K)]. PRACTICE. */
const LOSS_PER_FLOOR = 2;
const STOREY = 2.5; // [m]
/** A difference at which houses are heated in earnest [K]. PRACTICE. */
const EARNEST = 12;

/** What the house loses in the cold [W]: as drawn, else by its size; null when neither is known. */
export function expectedHeat(house: House, meanDifference: number): number | null {
  const design = designOf(house);
  const floor = house.floorAreaM2 ?? (house.volumeM3 === undefined ? null : house.volumeM3 / STOREY);
  const perKelvin = (design?.heatLossAsTested ?? design?.heatLoss) || (floor && LOSS_PER_FLOOR * floor);
  return perKelvin ? perKelvin * Math.max(EARNEST, meanDifference || 0) : null;
}

/** A heater gives at least and at most so many times what the house loses in the cold. PRACTICE. */
const WEAKEST = 0.2;
const STRONGEST = 15;
/** So far outside of that no appliance and no oversized boiler explains the readings. */
const FAR_BELOW = 0.03;
const FAR_ABOVE = 60;
/** Of the power while it is on: what a meter that was exchanged jumps by is above this. */
const STRONG_HOURS = 0.99;

/**
 * @param power as read, in the unit that house.json says where it does, on the grid [W], NaN where missing
 * @returns null when the unit can be right, or nothing is known
 */
export function heatUnitDoubt(
  power: Float64Array,
  { unit }: HeatEntry,
  read: string | null,
  expected: number | null,
): HeatUnitDoubt | null {
  if (expected === null || unit === read || !isHeatUnit(read)) return null;
  const on = power.filter((it) => it > 0).sort();
  if (on.length === 0) return null;
  const strongest = quantileSorted([...on], STRONG_HOURS);
  if (isHeatUnit(unit))
    return strongest > FAR_ABOVE * expected
      ? { read: unit, stated: true, likelier: read, strongest, expected }
      : null;
  const step = strongest < FAR_BELOW * expected ? 1 : strongest > FAR_ABOVE * expected ? -1 : 0;
  const ladder = LADDERS.find((it) => it.includes(read)) ?? [];
  const likelier = ladder[ladder.indexOf(read) + step];
  if (step === 0 || likelier === undefined) return null;
  const then = (strongest * UNITS[likelier]) / UNITS[read] / expected;
  return then >= WEAKEST && then <= STRONGEST ? { read, stated: false, likelier, strongest, expected } : null;
}
