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

/**
 * Beyond these a reading is no measurement of a house, its weather or its pipes. Zeros stay inside (see `falseZeros`),
 * as do a sensor's small errors about zero and at saturation, water that nearly boils, and power that a roof feeds back.
 */
const POSSIBLE: Partial<Record<Quantity, readonly [number, number]>> = {
  temperature: [-60, 100],
  dewPoint: [-100, 100],
  humidity: [-0.01, 1.05],
  absoluteHumidity: [-1e-4, 0.6],
  windSpeed: [-0.1, 115],
  irradiance: [-50, 1800],
  pressure: [0, 1.2e5],
  carbonDioxide: [0, 0.1],
};

/** Lowest and highest of what can be; null for a quantity that knows no bounds. */
export const possibleRange = (quantity: Quantity): readonly [number, number] | null =>
  POSSIBLE[quantity] ?? null;

/** At least half of the values can be this quantity. */
export const mostlyPlausible = (quantity: Quantity, values: readonly number[]): boolean =>
  values.length > 0 && values.filter((value) => isPlausible(quantity, value)).length * 2 >= values.length;
