/** What the weather of one step does to the outer faces and lets in through the glass. */
import { clearSkyTemperature, outsideConvection, radiation, skyShare, skyTemperature } from './films.ts';
import type { Model, ToOutside } from './model.ts';
import type { Physics } from './physics.ts';
import { tiltedIrradiance } from './sun.ts';
import type { Weather } from './weather.ts';

/** Films as they are, or the fixed ones of ISO 6946 without any sky, for cases with a known answer. */
export type Films = 'natural' | 'standard';

/** A face is given `given - conductance * its temperature` [W/m²]. */
export interface OuterFace {
  conductance: number;
  given: number;
}

export interface Surroundings {
  /** Goes on to step k of the weather. */
  at(k: number): void;
  /** What an outer face meets in this step. */
  face(outside: ToOutside): OuterFace;
  /** Sun on a window, less what slanting rays lose in the glass [W/m²]. */
  glazing(outside: ToOutside): number;
}

export function surroundings(model: Model, weather: Weather, films: Films, physics: Physics): Surroundings {
  const facing = (outside: ToOutside) => `${outside.bearing}/${outside.tilt}`;
  const outsides = model.pieces.map((piece) => piece.outside).filter((side) => side.kind === 'outside');
  const faces = new Map(
    outsides.map((side) => [
      facing(side),
      {
        bearing: side.bearing,
        tilt: side.tilt,
        skyShare: model.openSky * skyShare(side.tilt),
        opaque: 0,
        glazed: 0,
      },
    ]),
  );
  const met = { conductance: 0, given: 0 };
  let airTemperature = 0;
  let convection = 0;
  let radiating = 0;
  let sky = 0;
  const find = (outside: ToOutside) => {
    const face = faces.get(facing(outside));
    if (face === undefined) throw new RangeError(`no face ${facing(outside)} in this model`);
    return face;
  };

  return {
    at(k) {
      airTemperature = weather.airTemperature[k];
      convection = outsideConvection(model.shelter * weather.windSpeed[k]);
      radiating = radiation(airTemperature);
      sky =
        physics.sky === 'Swinbank'
          ? airTemperature +
            (clearSkyTemperature(airTemperature) - airTemperature) * (1 - 0.8 * weather.cloud[k])
          : skyTemperature(airTemperature, weather.dewPoint[k], weather.cloud[k]);
      for (const face of faces.values()) {
        face.opaque = 0;
        face.glazed = 0;
        if (weather.global[k] === 0) continue;
        const { direct, diffuse, cosine } = tiltedIrradiance(
          weather.sun[k],
          weather.global[k],
          weather.diffuse[k],
          face.bearing,
          face.tilt,
        );
        face.opaque = direct + diffuse;
        face.glazed = direct * slanting(cosine) + diffuse * slanting(0.5);
      }
    },
    face(outside) {
      const face = find(outside);
      const sun = outside.absorptance * face.opaque;
      if (films === 'standard') {
        met.conductance = 1 / 0.04;
        met.given = airTemperature / 0.04 + sun;
      } else {
        met.conductance = convection + radiating;
        met.given =
          convection * airTemperature +
          radiating * (face.skyShare * sky + (1 - face.skyShare) * airTemperature) +
          sun;
      }
      return met;
    },
    glazing: (outside) => find(outside).glazed,
  };
}

/** Incidence angle modifier of glass, coefficient 0.1 as is usual for double panes (A. F. Souka, H. H. Safwat,
 *  Determination of the optimum orientations for the double-exposure flat-plate collector, Solar Energy 10 (1966) 170-174). */
const slanting = (cosine: number) => (cosine <= 0.09 ? 0 : 1 - 0.1 * (1 / cosine - 1));
