/** The surroundings and the parameters put together: what acts on the network at every instant. */
import type { NetworkElement } from './elements.ts';
import type { NetworkModel } from './model.ts';
import type { SharedKey } from './parameters.ts';
import type { Drive } from './stepping.ts';
import type { Surroundings } from './surroundings.ts';

/** Shared parameters, as `parameters.ts` has them. */
export type Shared = (key: SharedKey) => number;

/** Outside surface: [m²K/W], and of that what radiates to the sky [W/(m²K)]. ISO 6946:2017, ISO 52016-1:2017. */
const OUTSIDE_FILM = 0.04;
const TO_SKY = 4.14;
/** What dark and light walls take up of the sun [–]. ISO 52016-1:2017, default. */
const ABSORPTANCE = 0.6;
/** What frames, shade and slanting light leave of a window's solar transmittance [–]. ISO 52016-1:2017, defaults. */
const APERTURE = 0.67;
/** The sky, clear or not, is colder than the air by about this on average [K]. */
const SKY_DEPRESSION = 7;
const RADIANT_SHARE = 0.25;
/** People and appliances give off about half their heat by radiation [–]. ISO 52016-1:2017: 0.4 to 0.6. */
const RADIANT_GAINS = 0.5;

export const radiantShareOf = (shared: Shared): number =>
  Math.min(0.8, Math.max(0, RADIANT_SHARE + shared('radiantShare')));

/** The share of the leakage that the wind drives [–]; the rest is the warm air's own lift. */
export const windShareOf = (shared: Shared): number => 1 / (1 + Math.exp(-shared('wind')));

/** Leakage at each instant over its mean, as wind and the difference of temperatures drive it [–]. */
export function leakageShape({ inside, outside, wind }: Surroundings, windShare: number): Float64Array {
  const lift = inside.map((it, k) => Math.sqrt(Math.abs(it - outside[k])));
  const mean = lift.reduce((sum, it) => sum + it, 0) / lift.length || 1;
  return lift.map((it, k) => ((1 - windShare) * it) / mean + windShare * (wind === null ? 1 : wind[k]));
}

/**
 * @param leakage   over what is drawn at each instant [–]
 * @param gains     constant heat as stated [W]
 * @param metered   1 where all heat is metered, so that nothing unknown radiates
 */
export function driveOf(
  model: NetworkModel,
  around: Surroundings,
  shared: Shared,
  leakage: Float64Array,
  gains: number,
  metered: Uint8Array,
): Drive {
  const { length } = around.inside;
  const outside = around.outside.map((it) => it + shared('loggers'));
  const sun = Math.exp(shared('sun'));
  const share = radiantShareOf(shared);
  const steady = gains + shared('gains');
  const radiant = new Float64Array(length);
  const convective = new Float64Array(length);
  const direct = new Float64Array(length);
  const unknownRadiance = new Float64Array(length);
  for (let k = 0; k < length; k++) {
    const heat = (around.heating[k] + around.heating[Math.min(k + 1, length - 1)]) / 2;
    radiant[k] = share * heat + RADIANT_GAINS * steady;
    convective[k] = (1 - share) * heat + (1 - RADIANT_GAINS) * steady;
    direct[k] = model.bridges + model.ventilation * leakage[k];
    unknownRadiance[k] = metered[k] === 1 ? 0 : share / (1 - share);
  }
  model.elements.forEach(({ area, solarTransmittance }, e) => {
    const through = area * solarTransmittance * APERTURE * sun;
    if (through > 0) for (let k = 0; k < length; k++) radiant[k] += through * around.irradiance[e][k];
  });
  const beyond = model.elements.map((element, e) => beyondOf(element, e, around, outside, shared, sun));
  return { inside: around.inside, beyond, radiant, convective, direct, outside, unknownRadiance };
}

/** Temperature beyond an element: of the air, moved by sun and sky; of the ground, the neighbour, the void. */
function beyondOf(
  { beyond, plane, temperatureFactor, solarTransmittance }: NetworkElement,
  e: number,
  around: Surroundings,
  outside: Float64Array,
  shared: Shared,
  sun: number,
): Float64Array {
  const logged = around.logged[e];
  switch (beyond) {
    case 'outside': {
      const warmed = solarTransmittance > 0 ? 0 : OUTSIDE_FILM * ABSORPTANCE * sun;
      const view = (1 + Math.cos(plane.tilt)) / 2;
      const chilled = OUTSIDE_FILM * TO_SKY * view * (SKY_DEPRESSION + shared('sky'));
      return outside.map((it, k) => it + warmed * around.irradiance[e][k] - chilled);
    }
    case 'ground':
      return new Float64Array(outside.length).fill(around.ground + shared('ground'));
    case 'adjacent':
      return (
        logged ?? new Float64Array(outside.length).fill(around.neighbour.temperature + shared('neighbour'))
      );
    case 'void':
      return (
        logged ?? outside.map((it, k) => it * temperatureFactor + around.inside[k] * (1 - temperatureFactor))
      );
    case 'underfloor':
    case 'inside':
      return outside;
  }
}
