/** The surroundings and the parameters put together: what acts on the network at every instant. */
import type { NetworkElement } from './elements.ts';
import { leakageAt, windShareOf } from './leakage.ts';
import { type Parameters, readParameters } from './parameters.ts';
import { endOf, type NetworkProblem } from './problem.ts';
import type { Drive } from './stepping.ts';
import type { Surroundings } from './surroundings.ts';

type Shared = Parameters['shared'];

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

const radiantShareOf = (shared: Shared): number =>
  Math.min(0.8, Math.max(0, RADIANT_SHARE + shared('radiantShare')));

/** Instants of the grid, both included. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * What acts on the network along a stretch of the record, other instants being left out. `radiant` and `direct` hang
 * on the stage: `actInStage` fills them.
 *
 * @param beyond where it is known, as the parameters that move leave it as it is
 */
export function driveOf(
  problem: NetworkProblem,
  shared: Shared,
  { from, to }: Stretch,
  known?: Drive['beyond'],
): Drive {
  const { surroundings: around, constantGains, metered } = problem;
  const { elements } = problem.stages[0].model;
  const { length } = around.inside;
  const share = radiantShareOf(shared);
  const steady = constantGains + shared('gains');
  const outside = new Float64Array(length);
  const convective = new Float64Array(length);
  const unknownRadiance = new Float64Array(length);
  const warmer = shared('loggers');
  for (let k = from; k <= to; k++) {
    outside[k] = around.outside[k] + warmer;
    convective[k] = (1 - share) * heatAt(around, k) + (1 - RADIANT_GAINS) * steady;
    unknownRadiance[k] = metered[k] === 1 ? 0 : share / (1 - share);
  }
  const beyond: Float64Array[] = [];
  if (known === undefined)
    elements.forEach((element, e) => {
      const twin = elements.findIndex((other, o) => o < e && asWarmBeyond(around, element, e, other, o));
      beyond.push(twin < 0 ? beyondOf(element, e, around, outside, shared, { from, to }) : beyond[twin]);
    });
  return {
    inside: around.inside,
    beyond: known ?? beyond,
    radiant: new Float64Array(length),
    convective,
    direct: new Float64Array(length),
    outside,
    unknownRadiance,
  };
}

/** Fills in what acts while a stage stands: radiant heat through its windows, and its leakage. */
export function actInStage(
  { radiant, direct }: Pick<Drive, 'radiant' | 'direct'>,
  problem: NetworkProblem,
  stage: number,
  x: ArrayLike<number>,
  { from, to }: Stretch = { from: problem.stages[stage].from, to: endOf(problem, stage) - 1 },
): void {
  const { surroundings: around, leakage, constantGains, stages } = problem;
  const { model } = stages[stage];
  const { own, shared } = readParameters(x, stage, stages.length);
  const share = radiantShareOf(shared);
  const steady = RADIANT_GAINS * (constantGains + shared('gains'));
  const sun = Math.exp(shared('sun'));
  const windShare = windShareOf(shared);
  const leaks = Math.exp(own('leakage'));
  for (let k = from; k <= to; k++) {
    radiant[k] = share * heatAt(around, k) + steady;
    direct[k] = model.bridges + model.ventilation * (leakageAt(leakage, k, windShare) * leaks);
  }
  model.elements.forEach(({ area, solarTransmittance }, e) => {
    const through = area * solarTransmittance * APERTURE * sun;
    const falls = around.irradiance[e];
    if (through > 0) for (let k = from; k <= to; k++) radiant[k] += through * falls[k];
  });
}

/** Whether the same lies beyond two elements: the sun, say, warms no pane, so that windows differ by their tilt only. */
const asWarmBeyond = (
  { irradiance, logged }: Surroundings,
  a: NetworkElement,
  e: number,
  b: NetworkElement,
  o: number,
): boolean =>
  a.beyond === b.beyond &&
  a.plane.tilt === b.plane.tilt &&
  a.temperatureFactor === b.temperatureFactor &&
  logged[e] === logged[o] &&
  (irradiance[e] === irradiance[o] || (a.solarTransmittance > 0 && b.solarTransmittance > 0)) &&
  a.solarTransmittance > 0 === b.solarTransmittance > 0;

/** Metered heat from one instant to the next [W]. */
const heatAt = ({ heating }: Surroundings, k: number): number =>
  (heating[k] + heating[Math.min(k + 1, heating.length - 1)]) / 2;

/** Temperature beyond an element: of the air, moved by sun and sky; of the ground, the neighbour, the void. */
function beyondOf(
  { beyond, plane, temperatureFactor, solarTransmittance }: NetworkElement,
  e: number,
  around: Surroundings,
  outside: Float64Array,
  shared: Shared,
  { from, to }: Stretch,
): Float64Array {
  const logged = around.logged[e];
  const even = (temperature: number) => new Float64Array(outside.length).fill(temperature, from, to + 1);
  switch (beyond) {
    case 'outside': {
      const warmed = solarTransmittance > 0 ? 0 : OUTSIDE_FILM * ABSORPTANCE * Math.exp(shared('sun'));
      const view = (1 + Math.cos(plane.tilt)) / 2;
      const chilled = OUTSIDE_FILM * TO_SKY * view * (SKY_DEPRESSION + shared('sky'));
      const falls = around.irradiance[e];
      const seen = new Float64Array(outside.length);
      for (let k = from; k <= to; k++) seen[k] = outside[k] + warmed * falls[k] - chilled;
      return seen;
    }
    case 'ground':
      return even(around.ground + shared('ground'));
    case 'adjacent':
      return logged ?? even(around.neighbour.temperature + shared('neighbour'));
    case 'void': {
      if (logged !== null) return logged;
      const between = new Float64Array(outside.length);
      for (let k = from; k <= to; k++)
        between[k] = outside[k] * temperatureFactor + around.inside[k] * (1 - temperatureFactor);
      return between;
    }
    case 'underfloor':
    case 'inside':
      return outside;
  }
}
