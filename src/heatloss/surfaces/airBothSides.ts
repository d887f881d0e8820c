/** The air on both sides of an element that a surface logger sits on. */
import type { ElementDesign } from '../../fabric/index.ts';
import type { House } from '../../house.ts';
import type { HouseRecord, RoomSeries } from '../../series/record.ts';
import { weightedMean } from '../../series/weightedMean.ts';

export interface AirBothSides {
  /** [°C], on the grid, as is the next. */
  readonly inside: Float64Array;
  readonly beyond: Float64Array;
  /** No inside logger hangs in the surface's room, so that the mean of the house stands in for it. */
  readonly houseMean: boolean;
}

export type NoAir = 'surface-on-ground' | 'surface-far-side-unknown';

export function airBothSides(
  house: House,
  { rooms, insideTemperature, outsideTemperature }: HouseRecord,
  { room }: RoomSeries,
  { name, to }: ElementDesign,
): AirBothSides | NoAir {
  if (to === 'ground') return 'surface-on-ground';
  const own = rooms.filter((it) => it.place === 'inside' && it.room === room);
  const beyond = to === 'outside' ? outsideTemperature : meanOf(behind(house, rooms, name, to));
  if (beyond === null) return 'surface-far-side-unknown';
  return { inside: meanOf(own) ?? insideTemperature, beyond, houseMean: own.length === 0 };
}

/** Loggers laid behind the element; those of which it is not said behind which one count for all. */
function behind({ loggers }: House, rooms: readonly RoomSeries[], element: string, to: 'adjacent' | 'void') {
  return rooms.filter(({ place, file, room }) => {
    const said = loggers.find((it) => it.place === to && it.file === file && (it.room ?? it.file) === room);
    return place === to && (said?.element === undefined || said.element === element);
  });
}

const meanOf = (loggers: readonly RoomSeries[]): Float64Array | null =>
  loggers.length === 0
    ? null
    : weightedMean(
        loggers.map(({ temperature }) => temperature),
        loggers.map(() => 1),
      );
