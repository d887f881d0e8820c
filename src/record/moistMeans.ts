/** The air of one night as each logger with humidity had it. */
import { absoluteHumidity, vapourPressure } from '../air/index.ts';
import { indexAt } from '../series/grid.ts';
import type { HouseRecord, RoomSeries } from '../series/record.ts';

/** Means over some hours by one logger. */
export interface MoistMean {
  readonly file: string;
  /** The file, where no room is named. */
  readonly room: string;
  readonly place: RoomSeries['place'];
  /** [°C] */
  readonly temperature: number;
  /** [–] */
  readonly relativeHumidity: number;
  /** [kg/m³] */
  readonly absoluteHumidity: number;
}

/**
 * One for each logger that has temperature and humidity in these hours.
 *
 * @param from instant [s]
 * @param to   instant [s]
 */
export const moistMeans = ({ grid, rooms }: HouseRecord, from: number, to: number): MoistMean[] => {
  const [first, last] = [Math.max(0, indexAt(grid, from)), Math.min(grid.length - 1, indexAt(grid, to))];
  return rooms.flatMap((room) => meanOver(room, first, last));
};

/** Over the cells in which both are known; nothing where none is. */
function meanOver(
  { file, room, place, temperature, relativeHumidity: relative }: RoomSeries,
  first: number,
  last: number,
): MoistMean[] {
  if (relative === null) return [];
  const sum = { count: 0, temperature: 0, relative: 0, absolute: 0 };
  for (let i = first; i <= last; i++) {
    if (Number.isNaN(temperature[i]) || Number.isNaN(relative[i])) continue;
    sum.count++;
    sum.temperature += temperature[i];
    sum.relative += relative[i];
    sum.absolute += absoluteHumidity(temperature[i], vapourPressure(temperature[i], relative[i]));
  }
  if (sum.count === 0) return [];
  /** More digits than any of it is known to only make the curves of a year larger. */
  const mean = (of: number, digits: number) => Number((of / sum.count).toFixed(digits));
  return [
    {
      file,
      room,
      place,
      temperature: mean(sum.temperature, 3),
      relativeHumidity: mean(sum.relative, 5),
      absoluteHumidity: mean(sum.absolute, 8),
    },
  ];
}
