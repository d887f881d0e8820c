/** Vapour pressure, dew point and relative humidity of air. */
import { saturationPressure, saturationTemperature } from './saturation.ts';

/**
 * Vapour pressure [Pa].
 *
 * @param temperature      [°C]
 * @param relativeHumidity [–, 0 to 1], over ice below 0 °C
 */
export function vapourPressure(temperature: number, relativeHumidity: number): number {
  return relativeHumidity * saturationPressure(temperature);
}

/**
 * Temperature to which air must cool to be saturated [°C].
 *
 * @param temperature      [°C]
 * @param relativeHumidity [–, above 0 to 1]
 */
export function dewPoint(temperature: number, relativeHumidity: number): number {
  return saturationTemperature(vapourPressure(temperature, relativeHumidity));
}

/**
 * Relative humidity [–] of air, or at a surface that it touches; above 1 means condensation.
 *
 * @param temperature of the air or the surface [°C]
 * @param pressure    of the vapour [Pa]
 */
export function relativeHumidity(temperature: number, pressure: number): number {
  return pressure / saturationPressure(temperature);
}
