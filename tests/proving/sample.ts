/** The demonstration house: its plan, how it was built, and five weeks of its winter. All invented. */
import { twoStoreyHouse } from './archetypes.ts';
import { makeModel } from './makeModel.ts';
import type { Deviations } from './plan.ts';
import { type Run, simulate } from './simulate.ts';
import { type MeteredHeat, type Span, siteDays, type Use } from './use.ts';
import { inlandEngland, makeWeather, type Weather } from './weather.ts';

export const seed = 4;

/** Instant of a local time in the sample's winter, when local time is UTC. */
export const at = (local: string) => Date.parse(`${local}:00Z`) / 1000;

export const place = { latitude: 52.2, longitude: -1.5 };
export const record: Span = { from: at('2027-01-09T12:00'), to: at('2027-02-13T12:00') };
export const stages = [
  { name: 'Before closing', from: '2027-01-09T12:00', to: '2027-01-25T08:00', complete: false },
  { name: 'After closing', from: '2027-01-28T08:00', to: '2027-02-13T12:00', complete: true },
] as const;
export const heatedNight: MeteredHeat = {
  from: at('2027-02-04T17:00'),
  to: at('2027-02-04T23:00'),
  power: 3000,
  shares: [0.35, 0.3, 0.35, 0],
};
/** The afternoon before the heated night until the morning after. */
const leftAlone: Span = { from: at('2027-02-04T13:00'), to: at('2027-02-05T09:00') };

export const plan = twoStoreyHouse('cavity');
export const built: Deviations = {
  insulation: { 'External walls': 1.18, Ceiling: 1.15, 'Ground floor': 1.12 },
  transmittance: {
    'Windows south': 1.06,
    'Windows north': 1.06,
    'Windows east': 1.06,
    'Windows west': 1.06,
    Doors: 1.1,
  },
  bridges: 1.2,
  mass: 1.04,
};
/** Loft hatch missing and service holes open; then closed one after the other. */
const shells = [
  { from: 0, leakage: { stack: 0.022, wind: 0.011, intoVoid: 0.6 } },
  { from: at('2027-01-25T14:00'), leakage: { stack: 0.012, wind: 0.007, intoVoid: 0.15 } },
  { from: at('2027-01-27T11:30'), leakage: { stack: 0.0035, wind: 0.0024, intoVoid: 0.1 } },
];
export const constantGains = [25, 35, 0, 0];

/** Drawn leakage with the vents shut, and with them open. */
export const drawnAirChanges = { ventsShut: 0.3, ventsOpen: 0.5 };

export interface Sample {
  readonly weather: Weather;
  readonly use: Use;
  readonly run: Run;
}

export function runSample(): Sample {
  const start = at('2026-12-26T00:00');
  const step = 60;
  const weather = makeWeather(seed, inlandEngland, place, start, record.to + 600, step);
  const use: Use = {
    ...siteDays(seed, start, 50, [leftAlone]),
    setTemperature: 21,
    band: 0.8,
    heatingPower: [3000, 2500, 3000, 0],
    metered: [heatedNight],
    constantGains,
    workingLeakage: 1.8,
  };
  const model = makeModel(plan, built);
  const run = simulate({ model, weather, use, shells, films: 'natural', startTemperature: 15 });
  return { weather, use, run };
}
