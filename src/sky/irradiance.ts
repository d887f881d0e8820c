/** What falls on a plane, from what falls on the level or from no more than the height of the sun. */
import type { SunPosition } from './sunPosition.ts';

/** A plane by the way it faces. */
export interface Plane {
  /** From lying [rad]: 0 faces the sky, π/2 stands upright. */
  readonly tilt: number;
  /** From north, clockwise [rad]; null where it is not known: then the mean of all bearings. */
  readonly azimuth: number | null;
}

const SOLAR_CONSTANT = 1361; // [W/m²], Kopp and Lean 2011
const YEAR = 365.2425 * 86_400; // [s]
/** Short grass and weathered paving [–]. PRACTICE. */
const GROUND_REFLECTANCE = 0.2;
/** A sun lower than this does not reach a plane as a beam that could be told from the sky [rad]. */
const LOWEST_BEAM = 0.035;

/**
 * Global irradiance on the level under a clear sky [W/m²], 0 when the sun is down.
 *
 * @see Haurwitz, Insolation in relation to cloudiness and cloud density, J. Meteorology 2 (1945) 154
 */
export function clearSkyIrradiance({ elevation }: SunPosition): number {
  const height = Math.sin(elevation);
  return height <= 0 ? 0 : 1098 * height * Math.exp(-0.059 / height);
}

/**
 * The share of the global irradiance that comes from the whole sky rather than from the sun's disc [–].
 *
 * @param clearness global irradiance on the level over that outside the atmosphere [–]
 * @see Erbs, Klein and Duffie, Solar Energy 28 (1982) 293, doi:10.1016/0038-092X(82)90302-4
 */
export function diffuseShare(clearness: number): number {
  if (clearness <= 0.22) return 1 - 0.09 * clearness;
  if (clearness > 0.8) return 0.165;
  return (
    0.9511 - 0.1604 * clearness + 4.388 * clearness ** 2 - 16.638 * clearness ** 3 + 12.336 * clearness ** 4
  );
}

/**
 * Irradiance on a plane [W/m²]: beam, an evenly bright sky, and what the ground reflects.
 *
 * @param global  on the level [W/m²]; NaN gives NaN
 * @param instant for the distance of the sun [s since 1970 UTC]
 * @see Liu and Jordan, Solar Energy 7 (1963) 53 (isotropic sky)
 */
export function irradianceOnPlane(
  global: number,
  sun: SunPosition,
  { tilt, azimuth }: Plane,
  instant: number,
): number {
  if (global <= 0) return 0;
  const height = Math.sin(sun.elevation);
  const beyondAir = SOLAR_CONSTANT * (1 + 0.033 * Math.cos((2 * Math.PI * instant) / YEAR)) * height;
  const low = sun.elevation < LOWEST_BEAM;
  const diffuse = low ? global : global * diffuseShare(Math.min(1, global / beyondAir));
  // Readings at sunrise, and clocks a little off, would make more of a low sun than reaches the air.
  const disc = low ? 0 : Math.min(global - diffuse, beyondAir) / height;
  const beam = disc * incidence(sun, tilt, azimuth);
  return (
    beam + (diffuse * (1 + Math.cos(tilt))) / 2 + (global * GROUND_REFLECTANCE * (1 - Math.cos(tilt))) / 2
  );
}

/** Cosine of the angle between the beam and the plane's normal, 0 behind it; its mean over all bearings without one. */
function incidence({ elevation, azimuth: from }: SunPosition, tilt: number, azimuth: number | null): number {
  const upward = Math.sin(elevation) * Math.cos(tilt);
  const sideways = Math.cos(elevation) * Math.sin(tilt);
  if (azimuth !== null) return Math.max(0, upward + sideways * Math.cos(from - azimuth));
  // The plane sees the sun while it faces it to within this angle.
  const edge = Math.acos(Math.min(1, Math.max(-1, -upward / Math.max(sideways, 1e-12))));
  return (upward * edge + sideways * Math.sin(edge)) / Math.PI;
}
