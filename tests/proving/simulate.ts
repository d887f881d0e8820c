/** Runs a house through weather and use, step by step. */
import { moveAir, noAirflow } from './airflow.ts';
import { airCapacity, roomBalance } from './balance.ts';
import { type Films, surroundings } from './boundary.ts';
import { advance, heldHeat, makeSlab } from './conduction.ts';
import { type MoistureState, saturation, stepMoisture } from './humidity.ts';
import type { Leakage } from './leakage.ts';
import type { Model } from './model.ts';
import { floorAreas, makePart, meetSurroundings, type Side } from './parts.ts';
import { type Physics, usualPhysics } from './physics.ts';
import { turnedHeaters } from './turnedHeaters.ts';
import { follow, type Use } from './use.ts';
import type { Weather } from './weather.ts';

export interface Scenario {
  readonly model: Model;
  readonly weather: Weather;
  readonly use: Use;
  /** How leaky the shell is, each from its instant on; the first holds from the beginning. */
  readonly shells: readonly { readonly from: number; readonly leakage: Leakage }[];
  readonly films: Films;
  /** Of everything at the beginning [°C]. */
  readonly startTemperature: number;
  /** Of the outer faces at the beginning, if they are to start colder [°C]. */
  readonly startOuter?: number;
  /** What the drawings do not tell; the usual when left out. */
  readonly physics?: Physics;
  /** Temperatures of the heated neighbours at every step [°C]; none when left out. */
  readonly neighbours?: readonly Float64Array[];
  /** From this instant on the pieces conduct as those of this model do, which must have the same cells. */
  readonly rebuilt?: { readonly from: number; readonly model: Model };
}

/** Value k of each array holds at `start + k * step`. */
export interface Run {
  readonly start: number;
  readonly step: number;
  /** By zone [°C]. */
  readonly airTemperature: readonly Float64Array[];
  readonly radiantTemperature: readonly Float64Array[];
  /** By zone, 0 to 1. */
  readonly relativeHumidity: readonly Float64Array[];
  /** Leakage of the heated zones. */
  readonly airChangesPerHour: Float64Array;
  /** Thermostat heating and metered heaters, means of the step that ends here [W]. */
  readonly heating: Float64Array;
  readonly metered: Float64Array;
  /** Over the whole run [J]: heat from heaters, gains and sun inside; heat gone out; heat stored more. */
  readonly balance: { readonly given: number; readonly lost: number; readonly stored: number };
}

/** How far back the edge of a slab remembers the weather [s]. */
const lateness = 7 * 86400;

export function simulate(scenario: Scenario): Run {
  const { model, weather, use, shells, films, startTemperature } = scenario;
  const { physics = usualPhysics, neighbours = [], startOuter = startTemperature, rebuilt } = scenario;
  const { sunOnFloor, sunOnFurniture, sunToAir } = physics;
  const convective = 1 - physics.radiantShare;
  const { zones, pieces } = model;
  const { start, step } = weather;
  const n = weather.airTemperature.length;
  const count = zones.length;
  const perZone = () => zones.map(() => new Float64Array(n));
  const run = {
    start,
    step,
    airTemperature: perZone(),
    radiantTemperature: perZone(),
    relativeHumidity: perZone(),
    airChangesPerHour: new Float64Array(n),
    heating: new Float64Array(n),
    metered: new Float64Array(n),
    balance: { given: 0, lost: 0, stored: 0 },
  };
  const initial = () => new Float64Array(count).fill(startTemperature);
  const rooms = { air: initial(), radiant: initial(), furniture: initial() };
  const parts = pieces.map((piece) => makePart(piece, startTemperature, startOuter));
  const floorArea = floorAreas(pieces, count);
  const floorSun = new Float64Array(count);
  const sun = new Float64Array(count);
  const given = {
    air: new Float64Array(count),
    radiant: new Float64Array(count),
    furniture: new Float64Array(count),
  };
  const isHeating = zones.map(() => false);
  const turned = turnedHeaters(model, use, step);
  const moisture = zones.map((): MoistureState => ({ vapour: weather.vapour[0], storeHumidity: 0.5 }));
  const flow = noAirflow(count);
  const around = surroundings(model, weather, films, physics);
  const beyond = {
    ground: 0,
    outdoor: 0,
    lateOutdoor: weather.airTemperature[0],
    neighbours: new Float64Array(neighbours.length),
  };
  const balanceRooms = roomBalance(zones, parts, rooms, step, physics.furnitureConvection);
  const heatingAt = follow(use.heating);
  const meteredAt = follow(use.metered);
  const workingAt = follow(use.working);
  const peopleAt = follow(use.people ?? []);
  const storedBefore = storedHeat();
  let shell = 0;
  let isRebuilt = false;

  for (let k = 0; k < n; k++) {
    const middle = start + (k - 0.5) * step;
    const outdoor = weather.airTemperature[k];
    while (shell + 1 < shells.length && shells[shell + 1].from <= middle) shell++;
    const doors = workingAt(middle) === undefined ? 1 : use.workingLeakage;
    const leakage = shells[shell].leakage;
    run.airChangesPerHour[k] = moveAir(flow, model, leakage, rooms.air, outdoor, weather.windSpeed[k], doors);
    if (k > 0) {
      around.at(k);
      lookBeyond(k, outdoor);
      if (rebuilt !== undefined && !isRebuilt && rebuilt.from <= middle) rebuild(rebuilt.model);
      letSunIn();
      heatRooms(k, middle);
      for (const part of parts) meetSurroundings(part, rooms, floorSun, around, beyond, films, physics, step);
      balanceRooms(given, flow, outdoor);
      advanceParts();
      exchangeAir(weather.vapour[k], outdoor);
    }
    for (let z = 0; z < count; z++) {
      run.airTemperature[z][k] = rooms.air[z];
      run.radiantTemperature[z][k] = rooms.radiant[z];
      run.relativeHumidity[z][k] = moisture[z].vapour / saturation(rooms.air[z]);
    }
  }
  run.balance.stored = storedHeat() - storedBefore;
  return run;

  function lookBeyond(k: number, outdoor: number) {
    beyond.ground = weather.groundTemperature[k];
    beyond.outdoor = outdoor;
    beyond.lateOutdoor += (outdoor - beyond.lateOutdoor) * (step / lateness);
    neighbours.forEach((temperature, i) => {
      beyond.neighbours[i] = temperature[k];
    });
  }

  function rebuild({ pieces }: Model) {
    isRebuilt = true;
    parts.forEach(({ slab }, i) => {
      slab.conductance.set(makeSlab(pieces[i].layers, 0).conductance);
    });
  }

  function letSunIn() {
    sun.fill(0);
    for (const { piece } of parts)
      if (piece.outside.kind === 'outside' && piece.solarShare > 0)
        sun[piece.inside.zone] += piece.area * piece.solarShare * around.glazing(piece.outside);
    for (let z = 0; z < count; z++) floorSun[z] = sun[z] > 0 ? (sunOnFloor * sun[z]) / floorArea[z] : 0;
  }

  function heatRooms(k: number, middle: number) {
    const metered = meteredAt(middle);
    const wanted = heatingAt(middle);
    const setTemperature = wanted?.setTemperature ?? use.setTemperature;
    const people = peopleAt(middle);
    run.metered[k] = metered?.power ?? 0;
    for (let z = 0; z < count; z++) {
      const threshold = setTemperature + (isHeating[z] ? use.band / 2 : -use.band / 2);
      isHeating[z] = wanted !== undefined && rooms.air[z] < threshold;
      const onOrOff = isHeating[z] ? use.heatingPower[z] : 0;
      const thermostat =
        turned?.[z]?.(wanted === undefined ? null : setTemperature - rooms.air[z]) ?? onOrOff;
      const byPeople = people ? people.power * people.shares[z] : 0;
      const heat =
        thermostat + use.constantGains[z] + (metered ? metered.power * metered.shares[z] : 0) + byPeople;
      run.heating[k] += thermostat;
      given.air[z] = convective * heat + sunToAir * sun[z];
      given.radiant[z] = (1 - convective) * heat + (1 - sunOnFloor - sunOnFurniture - sunToAir) * sun[z];
      given.furniture[z] = sunOnFurniture * sun[z];
      run.balance.given += (heat + sun[z]) * step;
    }
  }

  function advanceParts() {
    const givenBy = (side: Side) =>
      side.convection * rooms.air[side.to.zone] + side.radiation * rooms.radiant[side.to.zone];
    for (const { piece, slab, inside, beyond, outsideConductance, outsideGiven } of parts) {
      advance(slab, givenBy(inside) + inside.sun, beyond === undefined ? 0 : givenBy(beyond));
      if (beyond !== undefined) continue;
      const face = slab.temperature[slab.temperature.length - 1];
      run.balance.lost += piece.area * (outsideConductance * face - outsideGiven) * step;
    }
  }

  /** Moisture moves with the air; and what the air takes out is counted. */
  function exchangeAir(outsideVapour: number, outdoor: number) {
    const vapourBefore = moisture.map((state) => state.vapour);
    zones.forEach((zone, z) => {
      let inflow = flow.fromOutside[z];
      let onward = 0;
      let vapour = inflow * outsideVapour;
      for (let other = 0; other < count; other++) {
        const carried = flow.between[other * count + z];
        inflow += carried;
        vapour += carried * vapourBefore[other];
        onward += flow.between[z * count + other];
      }
      stepMoisture(zone.moisture, moisture[z], zone.volume, rooms.air[z], inflow, vapour, step);
      const takenOut = (inflow - onward) * rooms.air[z] - flow.fromOutside[z] * outdoor;
      const bridged = zone.bridges * (rooms.air[z] - outdoor);
      run.balance.lost += (airCapacity * takenOut + bridged) * step;
    });
  }

  function storedHeat(): number {
    let held = 0;
    for (const { piece, slab } of parts) held += piece.area * heldHeat(slab);
    zones.forEach((zone, z) => {
      held += zone.volume * airCapacity * rooms.air[z] + zone.furnitureCapacity * rooms.furniture[z];
    });
    return held;
  }
}
