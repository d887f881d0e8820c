/** One month of a build-up: what condenses and evaporates at each plane until the month is over. */
import type { MonthOfAir } from './climate.ts';
import { type Moment, type VapourFlow, vapourFlow } from './flow.ts';

export interface MonthlyMoisture {
  /** Vapour pressure at each plane at the beginning of the month [Pa]. */
  readonly pressure: readonly number[];
  /** At each plane at the end of the month [kg/m²]. */
  readonly mass: readonly number[];
  /** Vapour in through the inside surface and out through the outside surface over the month [kg/m²]. */
  readonly inflow: number;
  readonly outflow: number;
}

/** One month of the year, with a figure per plane in each list. */
export interface MoistureMonth extends MonthOfAir, MonthlyMoisture {
  /** [°C] */
  readonly temperature: readonly number[];
  /** [Pa] */
  readonly saturation: readonly number[];
  /** Gained in this month [kg/m²]; negative where more evaporated than condensed. */
  readonly gained: readonly number[];
}

/**
 * A month that begins with this much water. Where a plane dries out within it, the month goes on from there
 * with the plane dry.
 *
 * @param steady   what the month's means say of the planes
 * @param before   mass at each plane at its beginning [kg/m²]
 * @param duration [s]
 * @see ISO 13788:2012, clause 6 (MEMORY)
 */
export function moistureOfMonth(
  steady: Omit<Moment, 'wet'>,
  before: readonly number[],
  duration: number,
): MonthlyMoisture {
  const flowFrom = (mass: readonly number[]) => vapourFlow({ ...steady, wet: mass.map((it) => it > 0) });
  let mass = before;
  let flow = flowFrom(mass);
  const { pressure } = flow;
  let inflow = 0;
  let outflow = 0;
  for (let left = duration; left > 0; ) {
    const step = Math.min(left, untilDry(mass, flow));
    mass = mass.map((it, at) => after(it, flow.gathering[at], step));
    inflow += flow.inflow * step;
    outflow += flow.outflow * step;
    left -= step;
    flow = flowFrom(mass);
  }
  return { pressure, mass, inflow, outflow };
}

/** Until the first plane is dry [s]. */
function untilDry(mass: readonly number[], { gathering }: VapourFlow): number {
  return Math.min(...mass.map((it, at) => (gathering[at] < 0 ? it / -gathering[at] : Infinity)));
}

/** A plane that dries out in this step is dry, not a rounding error away from it. */
function after(mass: number, gathering: number, step: number): number {
  return gathering < 0 && mass / -gathering <= step ? 0 : mass + gathering * step;
}
