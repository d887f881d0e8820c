/** What passes heat between a face and what it sees: room air, other faces, wind, sky. */

const stefanBoltzmann = 5.670374e-8; // [W/(m²K⁴)]
const emissivity = 0.9;

export type Face = 'wall' | 'floor' | 'ceiling';

/**
 * Natural convection at an inside face [W/(m²K)].
 *
 * @param difference face less air [K]
 * @see G. N. Walton, Thermal Analysis Research Program Reference Manual, NBSIR 83-2655 (1983): 1.31 upright,
 *      9.482/(7.283-1) level with the heat rising, 1.810/(1.382+1) level with the heat lying still. The
 *      floor of 0.5 is ours: air in a real room is never quite at rest.
 */
export function insideConvection(face: Face, difference: number): number {
  const rises = face === 'floor' ? difference > 0 : difference < 0;
  const factor = face === 'wall' ? 1.31 : rises ? 1.509 : 0.76;
  return Math.max(0.5, factor * Math.cbrt(Math.abs(difference)));
}

/** Convection outside [W/(m²K)]; ISO 6946:2017 annex C, 4 + 4 v with v beside the face [m/s]. */
export const outsideConvection = (windSpeed: number) => 4 + 4 * windSpeed;

/** Radiation made linear about a temperature [°C]: [W/(m²K)]. */
export const radiation = (temperature: number) =>
  4 * emissivity * stefanBoltzmann * (temperature + 273.15) ** 3;

/**
 * What the sky looks like to a radiator [°C].
 *
 * @see Clear: P. Berdahl, M. Martin, Emissivity of clear skies, Solar Energy 32 (1984) 663-664. Cloud:
 *      M. Martin, P. Berdahl, Characteristics of infrared sky radiation in the United States, Solar Energy
 *      33 (1984) 321-336, for a cloud base of 2 km: exp(-2/8.2) = 0.78.
 */
export function skyTemperature(airTemperature: number, dewPoint: number, cloud: number): number {
  const clear = 0.711 + 0.56 * (dewPoint / 100) + 0.73 * (dewPoint / 100) ** 2;
  const emissivityOfSky = clear + (1 - clear) * cloud * 0.78;
  return (airTemperature + 273.15) * emissivityOfSky ** 0.25 - 273.15;
}

/** The share of a face's view that the sky's cold fills; the rest radiates like the air (Walton 1983). */
export function skyShare(tilt: number): number {
  const view = (1 + Math.cos((tilt * Math.PI) / 180)) / 2;
  return view * Math.sqrt(view);
}
