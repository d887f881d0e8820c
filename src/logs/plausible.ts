/** The values that a quantity can take in and around a house, in SI: wide enough for any honest reading. */
import type { Quantity } from '../assessment.ts';

/** Lowest and highest (see LogChannel for the units). */
const RANGE: Readonly<Record<Quantity, readonly [number, number]>> = {
  temperature: [-60, 90],
  dewPoint: [-80, 60],
  humidity: [0, 1.1],
  absoluteHumidity: [0, 0.2],
  windSpeed: [0, 75],
  irradiance: [-50, 1800],
  power: [0, 1e7],
  energy: [0, Number.POSITIVE_INFINITY],
  meter: [0, Number.POSITIVE_INFINITY],
  pressure: [3e4, 1.2e5],
  carbonDioxide: [5e-5, 0.1],
  voltage: [-100, 1000],
};

export function isPlausible(quantity: Quantity, value: number): boolean {
  const [low, high] = RANGE[quantity];
  return value >= low && value <= high;
}

/** At least half of the values can be this quantity. */
export const mostlyPlausible = (quantity: Quantity, values: readonly number[]): boolean =>
  values.length > 0 && values.filter((value) => isPlausible(quantity, value)).length * 2 >= values.length;
