/** One simulated house as it would be assessed: its design, its loggers on the grid, and its truth. */
import { type Design, designOf } from '../../src/fabric/index.ts';
import type { House } from '../../src/house.ts';
import { GRID_STEP, type Grid, gridOver, timeAt } from '../../src/series/grid.ts';
import type { HouseRecord } from '../../src/series/record.ts';
import { resample } from '../../src/series/resample.ts';
import { twoStoreyHouse, type WallKind } from './archetypes.ts';
import { ordinaryLogger, readLogger } from './loggers.ts';
import { makeModel } from './makeModel.ts';
import { areaOf, type Deviations, type Plan } from './plan.ts';
import { random } from './random.ts';
import { type Run, simulate } from './simulate.ts';
import { heatLoss, nightLeakage } from './truth.ts';
import { siteDays } from './use.ts';
import { inlandEngland, makeWeather, type Weather } from './weather.ts';

export interface WinterRecord {
  readonly design: Design;
  readonly record: HouseRecord;
  readonly place: { readonly latitude: number; readonly longitude: number; readonly timeZone: string };
  /** By definition [W/K]. */
  readonly trueHeatLoss: number;
}

const place = { latitude: 52.2, longitude: -1.5, timeZone: 'UTC' };
const DAY = 86400;
const HOUR = 3600;
export const constantGains = 60; // [W]

/** Sixteen January days with one heated night; how the house strays from its drawings is drawn from the seed. */
export function winterRecord(kind: WallKind, seed: number): WinterRecord {
  const plan = twoStoreyHouse(kind);
  const draws = random(seed, `as built, ${kind}`);
  const between = (low: number, high: number) => low + (high - low) * draws.uniform();
  const built: Deviations = {
    insulation: {
      'External walls': between(0.9, 1.5),
      Ceiling: between(0.9, 1.5),
      'Ground floor': between(0.9, 1.3),
    },
    transmittance: { Doors: between(0.9, 1.3) },
    bridges: between(0.8, 1.5),
    mass: between(0.85, 1.15),
  };
  const leaky = between(0.5, 4);
  const start = Date.UTC(2027, 0, 1) / 1000;
  const span = { from: start + 12 * DAY, to: start + 28 * DAY };
  const heatedDay = start + 22 * DAY;
  const heater = { from: heatedDay + 17 * HOUR, to: heatedDay + 23 * HOUR, power: 3000 };
  const weather = makeWeather(seed, inlandEngland, place, start, span.to + GRID_STEP, 60);
  const run = simulate({
    model: makeModel(plan, built),
    weather,
    use: {
      ...siteDays(seed, start, 30, [{ from: heatedDay + 13 * HOUR, to: heatedDay + 33 * HOUR }]),
      setTemperature: 21,
      band: 0.8,
      heatingPower: [3000, 2500, 3000, 0],
      metered: [{ ...heater, shares: [0.35, 0.3, 0.35, 0] }],
      constantGains: [25, 35, 0, 0],
      workingLeakage: 1.8,
    },
    shells: [{ from: 0, leakage: { stack: 0.004 * leaky, wind: 0.0028 * leaky, intoVoid: 0.2 } }],
    films: 'natural',
    startTemperature: 15,
  });
  const design = designOf(houseAsDrawn(plan));
  if (design === null) throw new Error('the plan has no elements');
  return {
    design,
    record: loggedRecord(run, weather, seed, gridOver(span.from, span.to), heater),
    place,
    trueHeatLoss: heatLoss(plan, built, nightLeakage(run, span)).whole,
  };
}

function houseAsDrawn(plan: Plan): House {
  const { groundFloor } = plan;
  return {
    name: 'Simulated house (invented)',
    location: place,
    floorAreaM2: 96,
    volumeM3: 240,
    loggers: [{ file: 'living.csv', place: 'inside' }],
    elements: [
      ...plan.elements.map(({ name, ...element }) => ({ name, areaM2: areaOf(plan, name), ...element })),
      {
        name: groundFloor.name,
        areaM2: areaOf(plan, groundFloor.name),
        to: 'ground',
        perimeterM: groundFloor.perimeter,
        buildUp: { facing: 'down', layers: [...groundFloor.layers] },
      },
    ],
    partitions: plan.partitions.map(({ name, buildUp }) => ({ name, areaM2: areaOf(plan, name), buildUp })),
    thermalBridges: { psiLengthWK: plan.bridges },
    ventilation: { airChangesPerHour: 0.3 },
  };
}

function loggedRecord(
  run: Run,
  weather: Weather,
  seed: number,
  grid: Grid,
  heater: { readonly from: number; readonly to: number; readonly power: number },
): HouseRecord {
  const logged = (name: string, temperature: Float64Array) => {
    const trace = {
      start: run.start,
      step: run.step,
      temperature,
      relativeHumidity: temperature.map(() => 0.5),
    };
    const readings = readLogger(
      seed,
      name,
      ordinaryLogger,
      trace,
      grid.start - HOUR,
      timeAt(grid, grid.length - 1),
    );
    return resample(
      Float64Array.from(readings, ({ time }) => time),
      Float64Array.from(readings, (reading) => reading.temperature),
      grid,
      HOUR,
    );
  };
  const rooms = ['Living room', 'Kitchen', 'Bedroom'].map((name, k) => logged(name, run.airTemperature[k]));
  return {
    grid,
    rooms: [],
    insideTemperature: rooms[0].map((it, i) => (65 * it + 55 * rooms[1][i] + 120 * rooms[2][i]) / 240),
    outsideTemperature: logged('Outside', weather.airTemperature),
    differenceSd: Math.hypot(0.2, 0.2), // as record/loggers.ts takes generic loggers to be
    insideResolution: ordinaryLogger.resolution,
    windSpeed: null,
    irradiance: null,
    heatingPower: Float64Array.from({ length: grid.length }, (_, i) => {
      const time = timeAt(grid, i);
      return time >= heater.from && time < heater.to ? heater.power : 0;
    }),
    heatingPowerSd: 0.02,
  };
}
