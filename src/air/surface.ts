/** The temperature factor of an inside surface, and the humidity there. */
import { saturationTemperature } from './saturation.ts';
import { vapourPressure } from './vapour.ts';

/** Monthly mean humidity at a surface above which mould may grow [–]. ISO 13788:2012, 5.3; BS 5250, Annex D. */
export const mouldHumidity = 0.8;

/** Temperatures on both sides [°C]. */
export interface Sides {
  readonly insideTemperature: number;
  readonly outsideTemperature: number;
}

/**
 * fRsi [–]: how far the surface keeps up with the inside, 0 as cold as outside, 1 as warm as inside; NaN when
 * both sides are equally warm.
 *
 * @param surfaceTemperature [°C]
 * @see ISO 13788:2012, 3.1.2
 */
export function temperatureFactor(surfaceTemperature: number, sides: Sides): number {
  const { insideTemperature, outsideTemperature } = sides;
  return insideTemperature === outsideTemperature
    ? Number.NaN
    : (surfaceTemperature - outsideTemperature) / (insideTemperature - outsideTemperature);
}

/**
 * fRsi of a plane element [–].
 *
 * @param transmittance     [W/(m²K)]
 * @param surfaceResistance [m²K/W]; the standard takes 0.25 for mould, 0.13 on glass
 * @see ISO 13788:2012, 5.3
 */
export function temperatureFactorOfPlane(transmittance: number, surfaceResistance: number): number {
  return 1 - transmittance * surfaceResistance;
}

/** Temperature of a surface [°C] with this temperature factor [–]. */
export function surfaceTemperature(factor: number, { insideTemperature, outsideTemperature }: Sides): number {
  return outsideTemperature + factor * (insideTemperature - outsideTemperature);
}

/**
 * The coldest that a surface may be [°C] before the air on it is more humid than `limit`.
 *
 * @param insideTemperature [°C]
 * @param humidity          of the air inside [–, above 0 to 1]
 * @param limit             at the surface [–]
 * @see ISO 13788:2012, 5.3
 */
export function coldestSurface(insideTemperature: number, humidity: number, limit = mouldHumidity): number {
  return saturationTemperature(vapourPressure(insideTemperature, humidity) / limit);
}
