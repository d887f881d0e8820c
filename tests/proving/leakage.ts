/** Air that a shell lets through. */

/** How leaky a shell is; the two drives add as squares (as powers of 1 / exponent, where one is given). */
export interface Leakage {
  /** Squared air changes per hour and kelvin, from the warm air's lift. */
  readonly stack: number;
  /** Squared air changes per hour and (m/s)², from the wind. */
  readonly wind: number;
  /** The share of the air on its way to the roof void that finds openings there, 0 to 1; the rest leaves outside. */
  readonly intoVoid: number;
  /** Flow grows as pressure to this power: 0.5 for holes (as when left out), 1 for the finest cracks. */
  readonly exponent?: number;
}

/**
 * Air changes per hour.
 *
 * @param difference inside less outside [K]
 * @param windSpeed  at 10 m over open land [m/s]
 * @see M. H. Sherman, D. T. Grimsrud, Infiltration-pressurization correlation: simplified physical modeling,
 *      ASHRAE Transactions 86 (1980) part 2, 778-807
 */
export function airChangesPerHour(leakage: Leakage, difference: number, windSpeed: number): number {
  const drive = leakage.stack * Math.abs(difference) + leakage.wind * windSpeed ** 2;
  return leakage.exponent === undefined ? Math.sqrt(drive) : drive ** leakage.exponent;
}
