/** How a house came out: drawn by chance, each record its own. */
import { insideConvections } from '../films.ts';
import type { HouseType } from '../houses/houseType.ts';
import type { Leakage } from '../leakage.ts';
import type { Physics } from '../physics.ts';
import type { Deviations, Plan } from '../plan.ts';

import { type Draws, drawsOf } from './draws.ts';
import type { Site } from './sites.ts';

/**
 * Conductivity of insulation 0.85 to 1.9 of drawn, evenly on the logarithm: one builder does all of a house much the
 * same, each element within some 10 % of that. Every sixth house is built as drawn to a few per cent.
 */
export function deviationsOf(type: HouseType, plan: Plan, seed: number): Deviations {
  const draws = drawsOf(seed, `as built, ${type.name}`);
  const careful = draws.chance(1 / 6);
  const shared = draws.factor(0.85, 1.9);
  const mass = draws.scatter(0.12);
  const windows = draws.between(0.9, 1.2);
  const names = [
    ...plan.elements.map(({ name }) => name),
    ...(plan.groundFloor ? [plan.groundFloor.name] : []),
  ];
  const each = (names: readonly string[], draw: (name: string) => number) =>
    Object.fromEntries(names.map((name) => [name, draw(name)]));
  const insulation = () =>
    careful ? draws.factor(0.96, 1.06) : Math.min(1.9, Math.max(0.85, shared * draws.scatter(0.1)));
  const stated = plan.elements.filter(({ uValue }) => uValue !== undefined).map(({ name }) => name);
  return {
    insulation: each(names, insulation),
    transmittance: each(stated, (name) => (name === 'Doors' ? draws.between(0.9, 1.3) : windows)),
    structure: each(names, () => (careful ? draws.factor(0.96, 1.06) : draws.factor(0.85, 1.25))),
    bridges: careful ? draws.factor(0.9, 1.1) : draws.factor(0.7, 1.6),
    mass: Math.min(1.3, Math.max(0.7, mass)),
    massOf: each([...names, ...plan.partitions.map(({ name }) => name)], () => draws.scatter(0.06)),
    shelter: each(names, () => draws.factor(0.4, 2)),
  };
}

/** The plan with what no drawing says of doors, vents and ground. */
export function asItStands(type: HouseType, plan: Plan, seed: number): Plan {
  const draws = drawsOf(seed, `stands, ${type.name}`);
  const open = draws.factor(0.4, 2);
  return {
    ...plan,
    exchanges: plan.exchanges.map(({ lower, upper, steady, buoyant }) => ({
      lower,
      upper,
      steady: steady * open,
      buoyant: buoyant * open,
    })),
    ...(plan.groundFloor && { groundFloor: { ...plan.groundFloor, edgeShare: draws.between(0, 0.5) } }),
    ...(plan.roofVoid && {
      roofVoid: {
        ...plan.roofVoid,
        vents: { steady: draws.between(1, 4), wind: draws.between(0.4, 1.8) },
      },
    }),
  };
}

/** Loose things, shelter, sky and shade about the house. */
export function surroundingsOf(type: HouseType, seed: number) {
  const draws = drawsOf(seed, `surroundings, ${type.name}`);
  return {
    furniture: draws.factor(0.5, 3.5), // of 6 kJ/(m²K): an empty house to a full one
    shelter: draws.between(0.35, 0.9),
    openSky: draws.between(0.4, 1),
    absorptance: draws.between(0.3, 0.85), // of walls and roofs
    shade: draws.between(0.6, 1.2), // what trees, curtains and dirt leave of the usual sun through windows
    groundOffset: 0.7 * draws.source.normal(), // [K]
  };
}

/** At 12 K and the site's mean wind as leaky as drawn by chance; the rest of how it comes about as well. */
export function leakageOf(type: HouseType, site: Site, seed: number): Leakage {
  const draws = drawsOf(seed, `leakage, ${type.name}`);
  const changes = type.drawnAirChanges.tested * draws.factor(type.leakage.least, type.leakage.most);
  const windShare = draws.between(0.15, 0.7);
  const exponent = draws.between(0.5, 0.7);
  const drive = changes ** (1 / exponent);
  return {
    stack: ((1 - windShare) * drive) / 12,
    wind: (windShare * drive) / site.climate.meanWindSpeed ** 2,
    intoVoid: draws.between(0.05, 0.5),
    exponent,
  };
}

export function physicsOf(type: HouseType, seed: number): Physics {
  const draws: Draws = drawsOf(seed, `physics, ${type.name}`);
  const sunOnFloor = draws.between(0.25, 0.6);
  const sunOnFurniture = draws.between(0.05, 0.2);
  return {
    insideConvection: draws.oneOf(insideConvections),
    insideFactor: draws.scatter(0.15),
    radiantShare: draws.between(0.05, 0.55),
    sunOnFloor,
    sunOnFurniture,
    sunToAir: draws.between(0.02, 0.15),
    furnitureConvection: draws.between(2, 5),
    sky: draws.oneOf(['Berdahl and Martin', 'Swinbank'] as const),
  };
}
