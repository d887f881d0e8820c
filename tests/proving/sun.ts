/** Where the sun stands and what it sends: position, clear sky, split into direct and diffuse, tilted faces. */

const radian = Math.PI / 180;
const solarConstant = 1367; // [W/m²]
const albedo = 0.2; // of the ground; common value

export interface SunPosition {
  /** Height of the sun's centre over the horizon, no refraction [rad]. */
  readonly altitude: number;
  /** From north, clockwise [rad]. */
  readonly bearing: number;
}

/**
 * Position of the sun.
 *
 * @param time      instant [s since 1970 UTC]
 * @param latitude  north positive [degrees]
 * @param longitude east positive [degrees]
 * @see J. J. Michalsky, The Astronomical Almanac's algorithm for approximate solar position (1950-2050),
 *      Solar Energy 40 (1988) 227-235; good to 0.01 degrees.
 */
export function sunPosition(time: number, latitude: number, longitude: number): SunPosition {
  const days = time / 86400 + 2440587.5 - 2451545; // since 2000-01-01 12:00 UTC
  const hour = (((time / 3600) % 24) + 24) % 24;
  const meanLongitude = 280.46 + 0.9856474 * days;
  const anomaly = (357.528 + 0.9856003 * days) * radian;
  const lambda = (meanLongitude + 1.915 * Math.sin(anomaly) + 0.02 * Math.sin(2 * anomaly)) * radian;
  const obliquity = (23.439 - 0.0000004 * days) * radian;
  const rightAscension = Math.atan2(Math.cos(obliquity) * Math.sin(lambda), Math.cos(lambda));
  const declination = Math.asin(Math.sin(obliquity) * Math.sin(lambda));
  const siderealHours = 6.697375 + 0.0657098242 * days + hour;
  const hourAngle = (siderealHours * 15 + longitude) * radian - rightAscension;
  const phi = latitude * radian;
  const altitude = Math.asin(
    Math.sin(declination) * Math.sin(phi) + Math.cos(declination) * Math.cos(phi) * Math.cos(hourAngle),
  );
  const bearing = Math.atan2(
    -Math.cos(declination) * Math.sin(hourAngle),
    Math.sin(declination) * Math.cos(phi) - Math.cos(declination) * Math.sin(phi) * Math.cos(hourAngle),
  );
  return { altitude, bearing: (bearing + 2 * Math.PI) % (2 * Math.PI) };
}

/**
 * Global irradiance on the level under a sky with clouds [W/m²].
 *
 * @param cloud share of the sky covered, 0 to 1
 * @see Clear sky: B. Haurwitz, Insolation in relation to cloudiness and cloud density, J. Meteorology 2
 *      (1945) 154-166. Cloud: F. Kasten, G. Czeplak, Solar and terrestrial radiation dependent on the
 *      amount and type of cloud, Solar Energy 24 (1980) 177-189.
 */
export function globalIrradiance(altitude: number, cloud: number): number {
  const height = Math.sin(altitude);
  if (height <= 0.01) return 0;
  return 1098 * height * Math.exp(-0.059 / height) * (1 - 0.75 * cloud ** 3.4);
}

/**
 * The diffuse part of the global irradiance on the level [W/m²].
 *
 * @see D. G. Erbs, S. A. Klein, J. A. Duffie, Estimation of the diffuse radiation fraction for hourly,
 *      daily and monthly-average global radiation, Solar Energy 28 (1982) 293-302
 */
export function diffuseIrradiance(global: number, altitude: number): number {
  const height = Math.sin(altitude);
  if (global <= 0 || height <= 0.01) return 0;
  const kt = global / (solarConstant * height);
  if (kt <= 0.22) return global * (1 - 0.09 * kt);
  if (kt > 0.8) return global * 0.165;
  return global * (0.9511 - 0.1604 * kt + 4.388 * kt ** 2 - 16.638 * kt ** 3 + 12.336 * kt ** 4);
}

export interface TiltedIrradiance {
  /** Straight from the sun [W/m²]. */
  readonly direct: number;
  /** From sky and ground [W/m²]. */
  readonly diffuse: number;
  /** Cosine of the angle between the sun and the face's normal; 0 when behind it. */
  readonly cosine: number;
}

/**
 * Irradiance of a face under an even sky.
 *
 * @param bearing of the face's normal from north, clockwise [degrees]
 * @param tilt    0 faces the sky, 90 is upright [degrees]
 * @see B. Y. H. Liu, R. C. Jordan, The long-term average performance of flat-plate solar energy collectors,
 *      Solar Energy 7 (1963) 53-74
 */
export function tiltedIrradiance(
  sun: SunPosition,
  global: number,
  diffuse: number,
  bearing: number,
  tilt: number,
): TiltedIrradiance {
  const slope = tilt * radian;
  const cosine = Math.max(
    0,
    Math.sin(sun.altitude) * Math.cos(slope) +
      Math.cos(sun.altitude) * Math.sin(slope) * Math.cos(sun.bearing - bearing * radian),
  );
  // A sun lower than 3 degrees stands behind trees and houses.
  const beam = sun.altitude > 3 * radian ? (global - diffuse) / Math.sin(sun.altitude) : 0;
  const sky = (diffuse * (1 + Math.cos(slope))) / 2;
  const ground = (albedo * global * (1 - Math.cos(slope))) / 2;
  return { direct: beam * cosine, diffuse: sky + ground, cosine };
}
