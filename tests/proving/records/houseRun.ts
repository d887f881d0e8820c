/** One house of a type through eight weeks: the run, and all that is true of it. */
import { boxPlan } from '../houses/box.ts';
import type { HouseType } from '../houses/houseType.ts';
import { makeModel } from '../makeModel.ts';
import type { Model } from '../model.ts';
import { asDrawn, type Deviations, type Plan } from '../plan.ts';
import { random } from '../random.ts';
import { type Run, simulate } from '../simulate.ts';
import { heatLoss } from '../truth.ts';
import { makeWeather, type Weather } from '../weather.ts';
import { asItStands, deviationsOf, leakageOf, physicsOf, surroundingsOf } from './asBuilt.ts';
import { day, days } from './calendar.ts';
import { beforeThe } from './change.ts';
import { type Course, courseOf } from './course.ts';
import { drawsOf } from './draws.ts';
import { neighbourTemperature } from './neighbours.ts';
import { type Site, sites } from './sites.ts';

export interface HouseRun {
  readonly type: HouseType;
  readonly seed: number;
  /** Tells this house's chance from that of another type with the same seed. */
  readonly ownSeed: number;
  readonly plan: Plan;
  readonly site: Site;
  /** The first local midnight [s]. */
  readonly start: number;
  readonly before: Deviations;
  readonly after: Deviations;
  readonly course: Course;
  readonly weather: Weather;
  readonly neighbours: readonly Float64Array[];
  readonly run: Run;
}

/** Halving it moves no truth and no night's fall by 0.5 %: see `houseRun.test.ts` [s]. */
export const usualStep = 300;

export function runHouse(type: HouseType, seed: number, step = usualStep): HouseRun {
  const ownSeed = Math.floor(random(seed, type.name).uniform() * 2 ** 31);
  const draws = drawsOf(ownSeed, 'place and time');
  const plan = boxPlan(type.box);
  const stands = asItStands(type, plan, ownSeed);
  const after = deviationsOf(type, plan, ownSeed);
  const site = draws.oneOf(sites);
  const leakage = leakageOf(type, site, ownSeed);
  const earlier = beforeThe(plan, after, leakage, site, ownSeed);
  const start = Date.UTC(2026, 8, 20 + Math.floor(draws.between(0, 165))) / 1000 - site.fromUtc * 3600;
  const around = surroundingsOf(type, ownSeed);
  const furnished = (deviations: Deviations) => withSurroundings(makeModel(stands, deviations), around);
  const model = furnished(earlier.built);
  const course = courseOf(servedOf(type, plan, model), site, start, ownSeed);
  const made = makeWeather(ownSeed, site.climate, site, start, course.until, step);
  const weather = {
    ...made,
    groundTemperature: made.groundTemperature.map((it) => it + around.groundOffset),
  };
  const neighbours = Array.from({ length: neighboursOf(type) }, (_, which) =>
    neighbourTemperature(ownSeed, which, start, step, made.airTemperature.length),
  );
  const change = start + days.change * day;
  const run = simulate({
    model,
    weather,
    use: course.use,
    shells: [
      { from: 0, leakage: earlier.leakage },
      { from: change, leakage },
    ],
    rebuilt: { from: change, model: furnished(after) },
    films: 'natural',
    startTemperature: 16,
    startOuter: site.climate.meanTemperature - site.climate.seasonalSwing / 2,
    physics: physicsOf(type, ownSeed),
    neighbours,
  });
  return {
    type,
    seed,
    ownSeed,
    plan,
    site,
    start,
    before: earlier.built,
    after,
    course,
    weather,
    neighbours,
    run,
  };
}

const neighboursOf = ({ box }: HouseType) =>
  Math.max(box.bottom.kind === 'neighbour' ? 1 : 0, ...Object.values(box.against ?? {}).map((it) => it + 1));

function servedOf({ drawnAirChanges }: HouseType, plan: Plan, { zones, heatedZones }: Model) {
  const volume = heatedZones.reduce((sum, z) => sum + zones[z].volume, 0);
  return {
    drawnHeatLoss: heatLoss(plan, asDrawn, drawnAirChanges.tested).whole,
    floorArea: plan.rooms.reduce((sum, room) => sum + room.floorArea, 0),
    shares: zones.map((zone, z) => (heatedZones.includes(z) ? zone.volume / volume : 0)),
  };
}

function withSurroundings(model: Model, around: ReturnType<typeof surroundingsOf>): Model {
  const { shelter, openSky, furniture, absorptance, shade } = around;
  const zones = model.zones.map((zone, z) =>
    model.heatedZones.includes(z)
      ? {
          ...zone,
          furnitureCapacity: zone.furnitureCapacity * furniture,
          furnitureArea: zone.furnitureArea * Math.sqrt(furniture),
        }
      : zone,
  );
  const pieces = model.pieces.map((piece) => ({
    ...piece,
    solarShare: piece.solarShare * shade,
    outside:
      piece.outside.kind === 'outside' && piece.outside.absorptance > 0
        ? { ...piece.outside, absorptance }
        : piece.outside,
  }));
  return { ...model, zones, pieces, shelter, openSky };
}
