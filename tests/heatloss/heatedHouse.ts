/** An invented house of one node with a heater that is switched by the clock. */
import { gridOver, timeAt } from '../../src/series/grid.ts';
import type { HouseRecord } from '../../src/series/record.ts';
import { nightsBetween } from '../../src/sky/nights.ts';
import { HOUR, midnight, place } from '../cooling/nightsAtHand.ts';

export interface HeatedHouse {
  readonly days?: number;
  /** To outside [W/K]. */
  readonly heatLoss?: number;
  /** [J/K] */
  readonly capacity?: number;
  /** To a neighbour of `neighbourTemperature` [W/K]. */
  readonly toNeighbour?: number;
  readonly neighbourTemperature?: number;
  /** Outdoors at so many hours after the first midnight [°C]. */
  readonly outside?: (hours: number) => number;
  /** Heater at so many hours after the first midnight [W]. */
  readonly power: (hours: number) => number;
  readonly wind?: (hours: number) => number;
}

/** From noon on, starting at 18 °C: dT/dt = (P − H·(T − Te) − Hn·(T − Tn)) / C, stepped by a minute. */
export function heatedHouse(house: HeatedHouse): HouseRecord {
  const { days = 2, heatLoss = 120, capacity = 15e6, outside = () => 4, power, wind } = house;
  const { toNeighbour = 0, neighbourTemperature = 20 } = house;
  const grid = gridOver(midnight + 12 * HOUR, midnight + (12 + 24 * days) * HOUR);
  const hours = Float64Array.from({ length: grid.length }, (_, i) => (timeAt(grid, i) - midnight) / HOUR);
  let temperature = 18;
  const inside = hours.map((hour) => {
    const before = temperature;
    for (let minute = 0; minute < grid.step / 60; minute++) {
      const at = hour + minute / 60;
      const heat =
        power(at) -
        heatLoss * (temperature - outside(at)) -
        toNeighbour * (temperature - neighbourTemperature);
      temperature += (60 * heat) / capacity;
    }
    return before;
  });
  return {
    grid,
    rooms: [],
    insideTemperature: inside,
    outsideTemperature: hours.map(outside),
    differenceSd: 0,
    insideResolution: 0.01,
    windSpeed: wind === undefined ? null : hours.map(wind),
    irradiance: null,
    heatingPower: hours.map(power),
    heatingPowerSd: 0.02,
  };
}

/** The first night: 10 January 2027. */
export const firstNight = ({ grid }: HouseRecord) =>
  nightsBetween(grid.start, timeAt(grid, grid.length - 1), place).slice(0, 1);

/** On from one hour after the first midnight to another. */
export const onBetween = (from: number, to: number, watts: number) => (hours: number) =>
  hours >= from && hours < to ? watts : 0;
