/** What no drawing tells of how heat moves about a house: it differs from one simulated house to the next. */
import type { InsideConvection } from './films.ts';

export interface Physics {
  readonly insideConvection: InsideConvection;
  /** On the convection at all inside faces. */
  readonly insideFactor: number;
  /** Of heaters and gains; the rest goes to the air. */
  readonly radiantShare: number;
  /** Where the sun through a window goes; the rest falls on all faces. */
  readonly sunOnFloor: number;
  readonly sunOnFurniture: number;
  readonly sunToAir: number;
  /** At loose things in the room [W/(m²K)]. */
  readonly furnitureConvection: number;
  /** How cold the sky is: by moisture and cloud, or by the air's temperature with the cloud on top. */
  readonly sky: 'Berdahl and Martin' | 'Swinbank';
}

export const usualPhysics: Physics = {
  insideConvection: 'Walton',
  insideFactor: 1,
  radiantShare: 0.25,
  sunOnFloor: 0.5,
  sunOnFurniture: 0.1,
  sunToAir: 0.1,
  furnitureConvection: 3,
  sky: 'Berdahl and Martin',
};
