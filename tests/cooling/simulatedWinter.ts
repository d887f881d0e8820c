/** Sixteen January days of a simulated house: what its loggers say, and what its air was without noise, bias and lag. */
import { type Grid, gridOver, timeAt } from '../../src/series/grid.ts';
import type { HouseRecord } from '../../src/series/record.ts';
import { resample } from '../../src/series/resample.ts';
import { nightsBetween } from '../../src/sky/nights.ts';
import { twoStoreyHouse, type WallKind } from '../proving/archetypes.ts';
import { ordinaryLogger, readLogger } from '../proving/loggers.ts';
import { makeModel } from '../proving/makeModel.ts';
import { random } from '../proving/random.ts';
import { simulate } from '../proving/simulate.ts';
import { type Span, siteDays } from '../proving/use.ts';
import { inlandEngland, makeWeather } from '../proving/weather.ts';

const place = { latitude: 52.2, longitude: -1.5, timeZone: 'UTC' };
const DAY = 86_400;
const HOUR = 3600;
export const start = Date.UTC(2027, 0, 1) / 1000;
const span = { from: start + 12 * DAY, to: start + 28 * DAY };

export const wallKinds: readonly WallKind[] = [
  'timber frame',
  'cavity',
  'solid, insulated outside',
  'solid, insulated inside',
];

/** @param open when the windows stand open, which makes the house twelve times as leaky */
export function simulatedWinter(kind: WallKind, seed: number, open: readonly Span[] = []) {
  const draws = random(seed, `nights, ${kind}`);
  const between = (low: number, high: number) => low + (high - low) * draws.uniform();
  const leaky = between(0.5, 4);
  const weather = makeWeather(seed, inlandEngland, place, start, span.to + 600, 60);
  const site = siteDays(seed, start, 30, []);
  const run = simulate({
    model: makeModel(twoStoreyHouse(kind), {
      insulation: { 'External walls': between(0.9, 1.5), Ceiling: between(0.9, 1.5) },
      transmittance: { Doors: between(0.9, 1.3) },
      bridges: between(0.8, 1.5),
      mass: between(0.85, 1.15),
    }),
    weather,
    use: {
      heating: site.heating,
      setTemperature: 21,
      band: 0.8,
      heatingPower: [3000, 2500, 3000, 0],
      metered: [],
      constantGains: [25, 35, 0, 0],
      working: open.length > 0 ? open : site.working,
      workingLeakage: open.length > 0 ? 150 : 1.8, // flow goes with the root of the drive: 12 times the flow
    },
    shells: [{ from: 0, leakage: { stack: 0.004 * leaky, wind: 0.0028 * leaky, intoVoid: 0.2 } }],
    films: 'natural',
    startTemperature: 15,
  });
  const grid = gridOver(span.from, span.to);
  const trace = (temperature: Float64Array) => ({
    start: run.start,
    step: run.step,
    temperature,
    relativeHumidity: temperature.map(() => 0.5),
  });
  const logged = (name: string, temperature: Float64Array) => {
    const end = timeAt(grid, grid.length - 1);
    const readings = readLogger(seed, name, ordinaryLogger, trace(temperature), grid.start - HOUR, end);
    return resample(
      Float64Array.from(readings, ({ time }) => time),
      Float64Array.from(readings, (reading) => reading.temperature),
      grid,
      HOUR,
    );
  };
  const exact = (temperature: Float64Array) =>
    resample(
      temperature.map((_, i) => run.start + i * run.step),
      temperature,
      grid,
      HOUR,
    );
  const record = (of: (name: string, temperature: Float64Array) => Float64Array) =>
    recordOf(
      grid,
      ['Living room', 'Kitchen', 'Bedroom'].map((name, k) => of(name, run.airTemperature[k])),
      of('Outside', weather.airTemperature),
    );
  return {
    nights: nightsBetween(grid.start, timeAt(grid, grid.length - 1), place),
    record: record(logged),
    /** The same without noise, bias and lag. */
    truth: record((_, temperature) => exact(temperature)),
  };
}

function recordOf(grid: Grid, rooms: readonly Float64Array[], outside: Float64Array): HouseRecord {
  const names = ['Living room', 'Kitchen', 'Bedroom'];
  return {
    grid,
    rooms: rooms.map((temperature, k) => ({
      file: `${names[k]}.csv`,
      room: names[k],
      place: 'inside',
      temperature,
      relativeHumidity: null,
    })),
    insideTemperature: rooms[0].map((it, i) => (65 * it + 55 * rooms[1][i] + 120 * rooms[2][i]) / 240),
    outsideTemperature: outside,
    differenceSd: Math.hypot(0.2, 0.2), // as record/loggers.ts takes generic loggers to be
    insideResolution: ordinaryLogger.resolution,
    windSpeed: null,
    irradiance: null,
    heatingPower: null,
    heatingPowerSd: 0.02,
  };
}
