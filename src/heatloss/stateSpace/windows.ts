/** The windows of a design, as the sun sees them. */
import type { DesignElement } from '../../house.ts';
import type { Window } from './inputs.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** Those to outside whose solar transmittance is known. */
export function windowsOf(elements: readonly DesignElement[]): Window[] {
  return elements
    .filter(({ to }) => to === undefined || to === 'outside')
    .flatMap(({ areaM2, gValue, tiltDeg, orientationDeg }) =>
      gValue === undefined || gValue === 0
        ? []
        : {
            area: areaM2 * gValue,
            plane: {
              tilt: radians(tiltDeg ?? 90),
              azimuth: orientationDeg === undefined ? null : radians(orientationDeg),
            },
          },
    );
}
