/** Edits of the air of a house: how big it is, and how often its air changes. */
import type { House } from '../../src/house.ts';

export type Ventilation = NonNullable<House['ventilation']>;

/** How the change of air is known. */
export type AirBy = 'nothing' | 'changes' | 'pressure test';

/** Taken until its own figures are typed. */
const FIRST_CHANGES = 0.5; // per hour, as in many homes. PRACTICE
const FIRST_PERMEABILITY = 5; // [m³/(h·m²)] at 50 Pa. PRACTICE

export function airBy({ ventilation }: House): AirBy {
  if (ventilation === undefined) return 'nothing';
  return ventilation.airPermeability50 === undefined ? 'changes' : 'pressure test';
}

/** Known in another way from then on; what stands beside both ways stays. */
export function knowAirBy(house: House, way: AirBy): void {
  if (way === airBy(house)) return;
  if (way === 'nothing') {
    delete house.ventilation;
    return;
  }
  const { asTestedAirChangesPerHour, mechanicalAirChangesPerHour, heatRecovery } = house.ventilation ?? {};
  house.ventilation = {
    ...(way === 'changes' ? { airChangesPerHour: FIRST_CHANGES } : { airPermeability50: FIRST_PERMEABILITY }),
    ...(asTestedAirChangesPerHour === undefined ? {} : { asTestedAirChangesPerHour }),
    ...(mechanicalAirChangesPerHour === undefined ? {} : { mechanicalAirChangesPerHour }),
    ...(heatRecovery === undefined ? {} : { heatRecovery }),
  };
}

/** A key that is undefined is left out from then on. */
export function changeAir({ ventilation }: House, change: Partial<Ventilation>): void {
  if (ventilation !== undefined) Object.assign(ventilation, change);
}

/** A divisor stands for what shelter and storeys make of it; without one it has no range of its own. */
export function divideBy({ ventilation }: House, divisor: number | undefined): void {
  if (ventilation === undefined) return;
  const stale = divisor === undefined ? ['divisor', 'divisorLow', 'divisorHigh'] : ['shelter', 'storeys'];
  for (const key of stale as (keyof Ventilation)[]) delete ventilation[key];
  if (divisor !== undefined) ventilation.divisor = divisor;
}

/** A key that is undefined is left out from then on. */
export function changeSize(house: House, change: Partial<Pick<House, 'floorAreaM2' | 'volumeM3'>>): void {
  Object.assign(house, change);
}
