/** How vapour passes a build-up at one moment, and where it condenses or evaporates. */

/** Vapour that a metre of still air lets through [kg/(m·s·Pa)]. ISO 13788:2012 (MEMORY). */
const permeabilityOfAir = 2e-10;

export interface Moment {
  /** sd from the inside surface to each plane [m], rising. */
  readonly vapourThickness: readonly number[];
  /** Saturation pressure at each plane [Pa]. */
  readonly saturation: readonly number[];
  /** Whether there is water at a plane; surfaces are never wet. */
  readonly wet: readonly boolean[];
  /** Vapour pressure of the air on either side [Pa]. */
  readonly insidePressure: number;
  readonly outsidePressure: number;
}

export interface VapourFlow {
  /** Vapour pressure at each plane [Pa]. */
  readonly pressure: readonly number[];
  /** What gathers at each plane [kg/(m²s)]; negative where it evaporates, 0 at the surfaces. */
  readonly gathering: readonly number[];
  /** Through the inside surface into the build-up, and through the outside surface out of it [kg/(m²s)]. */
  readonly inflow: number;
  readonly outflow: number;
}

/**
 * Vapour pressures as a string stretched over sd, below the saturation pressures: it touches them where vapour
 * condenses, and is nailed to them where there is water.
 *
 * The largest pressures that are nowhere above saturation and lose vapour nowhere but at water are the lower
 * convex hull of the saturation pressures, from nail to nail: the standard's construction for any number of
 * condensing planes.
 *
 * @see ISO 13788:2012, clause 6 (MEMORY)
 */
export function vapourFlow(moment: Moment): VapourFlow {
  const { vapourThickness: s } = moment;
  const last = s.length - 1;
  // A surface below the dew point of the air takes its vapour away: the pressure on it is that of saturation.
  const height = moment.saturation.slice();
  height[0] = Math.min(height[0], moment.insidePressure);
  height[last] = Math.min(height[last], moment.outsidePressure);
  const touching = touchingPlanes(s, height, moment.wet);
  const slope = touching.slice(1).map((at, i) => {
    const before = touching[i];
    return (height[at] - height[before]) / (s[at] - s[before]);
  });
  const gathering = s.map(() => 0);
  touching.slice(1, -1).forEach((at, i) => {
    gathering[at] = permeabilityOfAir * (slope[i + 1] - slope[i]);
  });
  return {
    pressure: alongString(s, height, touching, slope),
    gathering,
    inflow: -permeabilityOfAir * slope[0],
    outflow: -permeabilityOfAir * slope[slope.length - 1],
  };
}

/** The planes where the string bends, both surfaces included. */
function touchingPlanes(s: readonly number[], height: readonly number[], wet: readonly boolean[]): number[] {
  const touching: number[] = [];
  s.forEach((_, at) => {
    while (isLifted(touching, at, s, height, wet)) touching.pop();
    touching.push(at);
  });
  return touching;
}

/** Whether the last plane touched would be left free by a string that goes on to plane `at`. */
function isLifted(
  touching: readonly number[],
  at: number,
  s: readonly number[],
  height: readonly number[],
  wet: readonly boolean[],
): boolean {
  if (touching.length < 2) return false;
  const [before, middle] = touching.slice(-2);
  if (wet[middle]) return false;
  const straight = (height[at] - height[before]) * (s[middle] - s[before]);
  return (height[middle] - height[before]) * (s[at] - s[before]) >= straight;
}

function alongString(
  s: readonly number[],
  height: readonly number[],
  touching: readonly number[],
  slope: readonly number[],
): number[] {
  let part = 0;
  return s.map((it, at) => {
    while (touching[part + 1] < at) part += 1;
    return height[touching[part]] + slope[part] * (it - s[touching[part]]);
  });
}
