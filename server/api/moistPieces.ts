/** Moist air gone through piece by piece: a year of minutes neither fills the memory nor holds other requests up. */
import { firstFrom } from '../../src/series/firstFrom.ts';
import { nextTurn } from './keptForLast.ts';
import { type LoggerAir, type MoistHouse, moistAirOf, type Span } from './moistAir.ts';

/** Of one logger; every reading is in one piece only. */
export interface MoistPiece extends LoggerAir {
  /** Where the readings of this piece begin in the arrays, and before where they end. */
  readonly begin: number;
  readonly end: number;
}

/** So much is worked out at a time [s]: the days beside it are read as well, so that short pieces cost more. */
const LENGTH = 28 * 86_400;

/** How it goes, and the way out of it. */
export interface Way {
  /** Told before each piece up to which instant all is gone through [s]. */
  tell?(reached: number): void;
  /** Aborted when it is not wanted any more. */
  readonly signal: AbortSignal;
}

/**
 * In the order of time for each logger. The first and the last piece have the nearest readings beyond the span too.
 *
 * @throws the signal's reason once that is aborted
 */
export async function* moistPieces(
  house: MoistHouse,
  { from, to }: Span,
  { tell, signal }: Way,
): AsyncGenerator<MoistPiece> {
  for (let start = from; start < to; start += LENGTH) {
    tell?.(start);
    const stop = Math.min(start + LENGTH, to);
    for (const it of await moistAirOf(house, { from: start, to: stop })) {
      signal.throwIfAborted();
      const { time } = it.air;
      yield {
        ...it,
        begin: start === from ? 0 : firstFrom(time, start),
        end: stop === to ? time.length : firstFrom(time, stop),
      };
      await nextTurn();
    }
  }
}
