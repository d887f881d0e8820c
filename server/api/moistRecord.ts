/** What the moist air of a house comes to over its whole record, from every reading of it. */
import { nightsBetween } from '../../src/sky/nights.ts';
import { endOf } from './chartSpan.ts';
import type { LoggerMoisture } from './loggerShapes.ts';
import type { MoistHouse } from './moistAir.ts';
import { lineCollector, type MoistLine } from './moistLines.ts';
import { meansCollector } from './moistMeans.ts';
import { moistPieces } from './moistPieces.ts';
import type { Work } from './shapes.ts';
import { HOUR, type Intervals } from './thin.ts';

export interface MoistRecord {
  /** Bounds of the record [s]. */
  readonly first: number;
  readonly last: number;
  /** The least and the greatest of every hour of each line: of a year and a logger about 0.7 MB. */
  readonly hours: Intervals;
  readonly lines: readonly MoistLine[];
  readonly loggers: readonly LoggerMoisture[];
}

/**
 * @param tell   told how far it has come, where that takes long enough to be told
 * @param signal aborted when it is not wanted any more
 * @throws the signal's reason once that is aborted
 */
export async function moistRecord(
  house: MoistHouse,
  tell: (work: Work) => void,
  signal: AbortSignal,
): Promise<MoistRecord> {
  // An interval's mean may stand up to half of it beside where it was stamped.
  const { channels } = house;
  const from = Math.min(...channels.map(({ first, spacing }) => first - spacing));
  const to = Math.max(...channels.map(({ last, spacing }) => last + spacing));
  const start = Math.floor(from / HOUR) * HOUR;
  const hours = { start, step: HOUR, count: channels.length === 0 ? 0 : Math.floor((to - start) / HOUR) + 1 };
  const lines = lineCollector(hours, false);
  const means = meansCollector(channels.length === 0 ? [] : nightsBetween(from, to, house.house.location));
  const months = Math.round((to - from) / MONTH);
  const way = {
    signal,
    tell: (reached: number) =>
      months > 1 && tell(monthOf(months, (reached - start) / (endOf(hours) - start))),
  };
  for await (const piece of moistPieces(house, { from: start, to: endOf(hours) }, way)) {
    lines.take(piece);
    means.take(piece);
  }
  return { ...means.bounds(), hours, lines: lines.lines(), loggers: means.loggers() };
}

/** [s] */
const MONTH = 30.4 * 86_400;

const monthOf = (months: number, done: number): Work => ({
  done,
  what: `Reading month ${Math.floor(months * done) + 1} of ${months}.`,
});
