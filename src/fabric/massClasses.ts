/** Heat capacities of what nobody has worked out, by how heavy it is. */
import type { MassClass } from '../house.ts';

/** Of a house per floor area, furniture and air included [J/(m²K)]. ISO 13790:2008, 12.3.1.2, Table 12; READ second-hand. */
export const classHeatCapacities: Readonly<Record<MassClass, number>> = {
  'very light': 80e3,
  light: 110e3,
  medium: 165e3,
  heavy: 260e3,
  'very heavy': 370e3,
};

/** Of an opaque element per its own area [J/(m²K)]. ISO 52016-1:2017, Table B.14; from memory, to be confirmed. */
export const elementClassHeatCapacities: Readonly<Record<MassClass, number>> = {
  'very light': 50e3,
  light: 75e3,
  medium: 110e3,
  heavy: 175e3,
  'very heavy': 250e3,
};

/** Relative standard deviation of a class that somebody chose [–]: the next lies a factor of 1.4 to 1.6 away. PRACTICE. */
export const sdChosenClass = 0.25;
