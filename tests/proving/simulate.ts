/** Runs a house through weather and use, step by step. */
import { moveAir, noAirflow } from './airflow.ts';
import { airCapacity, roomBalance } from './balance.ts';
import { type Films, surroundings } from './boundary.ts';
import { advance, heldHeat } from './conduction.ts';
import { type MoistureState, saturation, stepMoisture } from './humidity.ts';
import type { Leakage } from './leakage.ts';
import type { Model } from './model.ts';
import { floorAreas, makePart, meetSurroundings, type Side } from './parts.ts';
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

/** Where the sun through a window goes; the rest falls on all faces. */
const sunOnFloor = 0.5;
const sunOnFurniture = 0.1;
const sunToAir = 0.1;
/** Of heaters and gains, to the air; the rest radiates. */
const convective = 0.75;

export function simulate(scenario: Scenario): Run {
  const { model, weather, use, shells, films, startTemperature } = scenario;
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
  const parts = pieces.map((piece) => makePart(piece, startTemperature));
  const floorArea = floorAreas(pieces, count);
  const floorSun = new Float64Array(count);
  const sun = new Float64Array(count);
  const given = {
    air: new Float64Array(count),
    radiant: new Float64Array(count),
    furniture: new Float64Array(count),
  };
  const isHeating = zones.map(() => false);
  const moisture = zones.map((): MoistureState => ({ vapour: weather.vapour[0], storeHumidity: 0.5 }));
  const flow = noAirflow(count);
  const around = surroundings(model, weather, films);
  const balanceRooms = roomBalance(zones, parts, rooms, step);
  const heatingAt = follow(use.heating);
  const meteredAt = follow(use.metered);
  const workingAt = follow(use.working);
  const storedBefore = storedHeat();
  let shell = 0;

  for (let k = 0; k < n; k++) {
    const middle = start + (k - 0.5) * step;
    const outdoor = weather.airTemperature[k];
    while (shell + 1 < shells.length && shells[shell + 1].from <= middle) shell++;
    const doors = workingAt(middle) === undefined ? 1 : use.workingLeakage;
    const leakage = shells[shell].leakage;
    run.airChangesPerHour[k] = moveAir(flow, model, leakage, rooms.air, outdoor, weather.windSpeed[k], doors);
    if (k > 0) {
      around.at(k);
      letSunIn();
      heatRooms(k, middle);
      for (const part of parts)
        meetSurroundings(part, rooms, floorSun, around, weather.groundTemperature[k], films, step);
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

  function letSunIn() {
    sun.fill(0);
    for (const { piece } of parts)
      if (piece.outside.kind === 'outside' && piece.solarShare > 0)
        sun[piece.inside.zone] += piece.area * piece.solarShare * around.glazing(piece.outside);
    for (let z = 0; z < count; z++) floorSun[z] = sun[z] > 0 ? (sunOnFloor * sun[z]) / floorArea[z] : 0;
  }

  function heatRooms(k: number, middle: number) {
    const metered = meteredAt(middle);
    const wanted = heatingAt(middle) !== undefined;
    run.metered[k] = metered?.power ?? 0;
    for (let z = 0; z < count; z++) {
      const threshold = use.setTemperature + (isHeating[z] ? use.band / 2 : -use.band / 2);
      isHeating[z] = wanted && rooms.air[z] < threshold;
      const thermostat = isHeating[z] ? use.heatingPower[z] : 0;
      const heat = thermostat + use.constantGains[z] + (metered ? metered.power * metered.shares[z] : 0);
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
