/** What passes heat between a face and what it sees: room air, other faces, wind, sky. */

const stefanBoltzmann = 5.670374e-8; // [W/(m²K⁴)]
const emissivity = 0.9;

export type Face = 'wall' | 'floor' | 'ceiling';

/** Which way a face lies to its air: upright, level with the heat rising, level with the heat lying still. */
type Lie = 'upright' | 'rising' | 'still';

/**
 * Convection at an inside face by several hands [W/(m²K)], from the difference of face and air [K].
 *
 * @see Walton: Thermal Analysis Research Program Reference Manual, NBSIR 83-2655 (1983): 1.31 upright,
 *      9.482/(7.283-1) level with the heat rising, 1.810/(1.382+1) level with the heat lying still.
 *      Alamdari, Hammond, Building Services Engineering Research & Technology 4 (1983) 106-112, for faces of
 *      2.5 m (MEMORY). Khalifa, Marshall, Int. J. Heat and Mass Transfer 33 (1990) 2219-2236, rooms with a
 *      radiator (MEMORY). Fixed: ISO 52016-1:2017, 2.5, 5.0 and 0.7 (MEMORY).
 */
const convections = {
  Walton: (lie: Lie, d: number) => ({ upright: 1.31, rising: 1.509, still: 0.76 })[lie] * Math.cbrt(d),
  'Alamdari and Hammond': (lie: Lie, d: number) =>
    lie === 'still'
      ? 0.6 * (d / 2.5 ** 2) ** 0.2
      : (((lie === 'upright' ? 1.5 : 1.4) * (d / 2.5) ** 0.25) ** 6 +
          ((lie === 'upright' ? 1.23 : 1.63) * Math.cbrt(d)) ** 6) **
        (1 / 6),
  'Khalifa and Marshall': (lie: Lie, d: number) =>
    lie === 'upright' ? 2.07 * d ** 0.23 : lie === 'rising' ? 2.72 * d ** 0.13 : 0.7,
  fixed: (lie: Lie) => ({ upright: 2.5, rising: 5, still: 0.7 })[lie],
};
export type InsideConvection = keyof typeof convections;
export const insideConvections = Object.keys(convections) as InsideConvection[];

/**
 * Convection at an inside face [W/(m²K)]. The floor of 0.5 is ours: air in a real room is never quite at rest.
 *
 * @param difference face less air [K]
 */
export function insideConvection(face: Face, difference: number, by: InsideConvection = 'Walton'): number {
  const rises = face === 'floor' ? difference > 0 : difference < 0;
  const lie = face === 'wall' ? 'upright' : rises ? 'rising' : 'still';
  return Math.max(0.5, convections[by](lie, Math.abs(difference)));
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

/** The same without regard to moisture or cloud [°C]. @see W. C. Swinbank, Q. J. R. Met. Soc. 89 (1963) 339-348. */
export const clearSkyTemperature = (airTemperature: number) =>
  0.0552 * (airTemperature + 273.15) ** 1.5 - 273.15;

/** The share of a face's view that the sky's cold fills; the rest radiates like the air (Walton 1983). */
export function skyShare(tilt: number): number {
  const view = (1 + Math.cos((tilt * Math.PI) / 180)) / 2;
  return view * Math.sqrt(view);
}
