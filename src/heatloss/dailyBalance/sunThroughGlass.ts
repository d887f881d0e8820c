/** The sun's heat through the glass as drawn. */
import type { House } from '../../house.ts';
import { type Grid, timeAt } from '../../series/grid.ts';
import { clearSkyIrradiance, irradianceOnPlane, type Plane } from '../../sky/irradiance.ts';
import { sunPosition } from '../../sky/sunPosition.ts';

/**
 * Of the light on a pane what comes in beside its own transmittance: 0.7 is glass and not frame (ISO 13790:2008,
 * 11.4.5), 0.9 for slanting light (ibid. 11.4.2), and 0.9 past reveals and neighbours (PRACTICE) [–].
 */
const APERTURE = 0.7 * 0.9 * 0.9;
/**
 * Of what clear days would bring onto the panes, in an ordinary run of days [–]: of the panes' own sun, and so another
 * figure than `USUAL_CLEARNESS` of level ground, which a fit can still correct. PRACTICE; on the tuning seeds 100 to
 * 103 half of the records had 0.50 to 0.74, all of them 0.20 to 0.93.
 */
const ORDINARY_SKY = 0.6;

/**
 * Heat through all panes to outside in each cell [W], by the irradiance where it was logged, else by an ordinary sky.
 *
 * @param irradiance global horizontal [W/m²], NaN where missing; null when none was logged
 * @param missing    elements that are not there yet
 * @returns null when no glass is drawn
 */
export function sunThroughGlass(
  { elements = [], location }: House,
  missing: readonly string[],
  grid: Grid,
  irradiance: Float64Array | null,
): Float64Array | null {
  const panes = elements.filter(
    ({ name, gValue = 0, to = 'outside' }) => gValue > 0 && to === 'outside' && !missing.includes(name),
  );
  if (panes.length === 0) return null;
  return Float64Array.from({ length: grid.length }, (_, k) => {
    const instant = timeAt(grid, k);
    const sun = sunPosition(instant, location);
    const clear = clearSkyIrradiance(sun);
    if (irradiance === null && clear === 0) return 0;
    const level = irradiance === null ? clear : irradiance[k];
    const heat = panes.reduce(
      (sum, pane) =>
        sum + pane.areaM2 * (pane.gValue ?? 0) * irradianceOnPlane(level, sun, planeOf(pane), instant),
      0,
    );
    return APERTURE * heat * (irradiance === null ? ORDINARY_SKY : 1);
  });
}

const radians = (degrees: number) => (degrees * Math.PI) / 180;

const planeOf = ({ tiltDeg = 90, orientationDeg }: NonNullable<House['elements']>[number]): Plane => ({
  tilt: radians(tiltDeg),
  azimuth: orientationDeg === undefined ? null : radians(orientationDeg),
});

/** Of a clear sky's so much must have come for it to be daylight that was logged, and not a dead column [–]. */
const LEAST_SUN = 0.03;

/** Whether an irradiance has seen days. */
export function seesDaylight(irradiance: Float64Array, grid: Grid, location: House['location']): boolean {
  let came = 0;
  let couldCome = 0;
  irradiance.forEach((it, k) => {
    if (Number.isNaN(it)) return;
    came += it;
    couldCome += clearSkyIrradiance(sunPosition(timeAt(grid, k), location));
  });
  return came > LEAST_SUN * couldCome;
}
