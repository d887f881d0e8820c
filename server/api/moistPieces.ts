/** Moist air gone through piece by piece: a year of minutes neither fills the memory nor holds other requests up. */
import { nextTurn } from './keptForLast.ts';
import { type LoggerAir, type MoistHouse, moistAirOf, type Span } from './moistAir.ts';

/** Of one logger; every reading is in one piece only. */
export interface MoistPiece extends LoggerAir {
  /** Where the readings of this piece begin in the arrays, and before where they end. */
  readonly begin: number;
  readonly end: number;
}

/** So much is worked out at a time [s]. */
const LENGTH = 7 * 86_400;

/** In the order of time for each logger. The first and the last piece have the nearest readings beyond the span too. */
export async function* moistPieces(house: MoistHouse, { from, to }: Span): AsyncGenerator<MoistPiece> {
  for (let start = from; start < to; start += LENGTH) {
    const stop = Math.min(start + LENGTH, to);
    for (const it of moistAirOf(house, { from: start, to: stop })) {
      const { time } = it.air;
      yield {
        ...it,
        begin: start === from ? 0 : indexAt(time, start),
        end: stop === to ? time.length : indexAt(time, stop),
      };
    }
    await nextTurn();
  }
}

/** The first reading at an instant or later. */
export function indexAt(time: Float64Array, instant: number): number {
  let [low, high] = [0, time.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (time[middle] < instant) low = middle + 1;
    else high = middle;
  }
  return low;
}
