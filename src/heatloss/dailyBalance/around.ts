/** What a house and its record give to balance: the series, the sun through its glass, its neighbour. */
import type { JudgedNight, StageNights } from '../../cooling/index.ts';
import { type Design, statedNeighbour } from '../../fabric/index.ts';
import type { House } from '../../house.ts';
import { NORMAL_95 } from '../../maths/logInterval.ts';
import type { HouseRecord } from '../../series/record.ts';
import { weightedMean } from '../../series/weightedMean.ts';
import type { BalanceSeries } from './heatDay.ts';
import { openings } from './opened.ts';
import { seesDaylight, sunThroughGlass } from './sunThroughGlass.ts';

export interface BalanceInput {
  readonly house: House;
  readonly design: Design | null;
  /** Where no inside temperature was logged the house's constant stands for it. */
  readonly record: HouseRecord;
  readonly stage: Pick<StageNights, 'from' | 'to' | 'missing'>;
  /** Of all stages, in the order of time; their sunrises begin the days. */
  readonly nights: readonly JudgedNight[];
}

export interface Around {
  readonly series: BalanceSeries;
  /** Whether the sun is that of drawn glass. */
  readonly glazed: boolean;
  /** The constant that stands for the inside temperature [°C]; null where it was logged. */
  readonly assumedInside: number | null;
  /** How the neighbour's temperature is known, and to how much [K]; null without one. */
  readonly neighbour: { readonly known: 'logged' | 'stated' | 'assumed'; readonly sd: number } | null;
}

/** A heated neighbour of whom nobody tells how warm it is [°C], from an empty house upward [K]. PRACTICE. */
const USUAL_NEIGHBOUR = { temperature: 20, sd: 4 };

/** Null without metered heat, and where the flow to a neighbour is not known. */
export function aroundOf({ house, design, record, stage, nights }: BalanceInput): Around | null {
  const { grid, heatingPower, outsideTemperature } = record;
  const toNeighbour = design === null ? 0 : design.toNeighbours;
  if (heatingPower === null || toNeighbour === null) return null;
  const unlogged = record.insideTemperature.every(Number.isNaN);
  const assumedInside = unlogged ? (house.conditions?.insideC ?? null) : null;
  const inside =
    assumedInside === null ? record.insideTemperature : new Float64Array(grid.length).fill(assumedInside);
  const irradiance =
    record.irradiance !== null &&
    seesDaylight(record.irradiance, grid, house.location) &&
    mostlyKnown(record.irradiance, heatingPower)
      ? record.irradiance
      : null;
  const sun = sunThroughGlass(house, stage.missing, grid, irradiance);
  const neighbour = toNeighbour > 0 ? neighbourOf(house, record) : null;
  const series: BalanceSeries = {
    grid,
    inside,
    outside: outsideTemperature,
    neighbour: neighbour?.temperature ?? null,
    toNeighbour,
    power: heatingPower,
    irradiance,
    sun: sun ?? new Float64Array(grid.length),
    heatCapacity: design?.heatCapacity ?? 0,
    constantGains: house.constantGainsW ?? 0,
    openings: openings(grid, inside, nights),
    leftOut: nights.flatMap(({ night, reasons }) =>
      reasons.some(({ code }) => code === 'left-out-by-hand') ? [night.sunset] : [],
    ),
  };
  return { series, glazed: sun !== null, assumedInside, neighbour };
}

/** Half of the metered instants have a sun: those days count, else the sun is left to an ordinary sky. */
function mostlyKnown(irradiance: Float64Array, power: Float64Array): boolean {
  const metered = irradiance.filter((_, k) => !Number.isNaN(power[k]));
  return metered.filter((it) => !Number.isNaN(it)).length > metered.length / 2;
}

/** By the loggers next door, else as stated, else as people heat. */
function neighbourOf(house: House, { rooms, grid, differenceSd }: HouseRecord) {
  const loggers = rooms.filter(({ place }) => place === 'adjacent').map(({ temperature }) => temperature);
  if (loggers.length > 0) {
    const evenly = loggers.map(() => 1);
    return { known: 'logged' as const, sd: differenceSd, temperature: weightedMean(loggers, evenly) };
  }
  const stated = statedNeighbour(house);
  const constant = (value: number) => new Float64Array(grid.length).fill(value);
  return stated === null
    ? {
        known: 'assumed' as const,
        sd: USUAL_NEIGHBOUR.sd,
        temperature: constant(USUAL_NEIGHBOUR.temperature),
      }
    : {
        known: 'stated' as const,
        sd: stated.plusMinus / NORMAL_95,
        temperature: constant(stated.temperature),
      };
}
