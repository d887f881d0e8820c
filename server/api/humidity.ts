/** Humidity over any span: as it was logged and what follows from it, thinned; and the mean of each night. */
import { Hono } from 'hono';
import { nightsBetween } from '../../src/sky/nights.ts';
import { refused } from '../refused.ts';
import type { Services } from '../services.ts';
import { endOf, intervalsAsked, span, storedHouse, thinnedChannel } from './chartSpan.ts';
import { keptForLast } from './keptForLast.ts';
import type { HumidityAnswer, LoggerMoisture } from './loggerShapes.ts';
import { type MoistHouse, outsideFileOf } from './moistAir.ts';
import { lineCollector, type MoistLine, moistLinesOver } from './moistLines.ts';
import { meansCollector } from './moistMeans.ts';
import { moistPieces } from './moistPieces.ts';
import { HOUR, type Intervals, isCoarse, middles, thin } from './thin.ts';
import { checkedQuery } from './validate.ts';

export const humidityApi = ({ reading }: Services) => {
  const moistHouse = (id: string): MoistHouse => ({
    house: storedHouse(reading, id),
    channels: reading.channels(id),
    reading,
  });
  const recordOf = keptForLast(reading, (id) => moistRecord(moistHouse(id)));
  return new Hono().get('/:id/humidity', checkedQuery(span), async (c) => {
    const id = c.req.param('id');
    const house = moistHouse(id);
    const { first, last, hours, lines: hourly, loggers } = await recordOf(id);
    if (loggers.length === 0)
      throw refused(404, 'no-humidity', 'No logger of this house has a humidity beside its temperature.');
    const intervals = intervalsAsked(c.req.valid('query'), first, last);
    const lines = isCoarse(intervals)
      ? hourly.map((line) => ofHours(line, hours, intervals))
      : await moistLinesOver(house, intervals);
    const channels = (over: boolean) =>
      lines
        .filter((it) => it.over === over)
        .map((it) => thinnedChannel({ ...it, column: it.quantity }, it.thinned, true));
    const outside = outsideFileOf(house);
    const answer: HumidityAnswer = {
      first,
      last,
      time: middles(intervals),
      step: intervals.step,
      channels: channels(false),
      excess: channels(true),
      loggers,
      outside: loggers.some(({ file }) => file === outside) ? outside : null,
    };
    return c.json(answer);
  });
};

interface MoistRecord {
  /** Bounds of the record [s]. */
  readonly first: number;
  readonly last: number;
  /** The least and the greatest of every hour of each line: of a year and a logger about 0.7 MB. */
  readonly hours: Intervals;
  readonly lines: readonly MoistLine[];
  readonly loggers: readonly LoggerMoisture[];
}

async function moistRecord(house: MoistHouse): Promise<MoistRecord> {
  // An interval's mean may stand up to half of it beside where it was stamped.
  const { channels } = house;
  const from = Math.min(...channels.map(({ first, spacing }) => first - spacing));
  const to = Math.max(...channels.map(({ last, spacing }) => last + spacing));
  const start = Math.floor(from / HOUR) * HOUR;
  const hours = { start, step: HOUR, count: channels.length === 0 ? 0 : Math.floor((to - start) / HOUR) + 1 };
  const lines = lineCollector(hours, false);
  const means = meansCollector(channels.length === 0 ? [] : nightsBetween(from, to, house.house.location));
  for await (const piece of moistPieces(house, { from: start, to: endOf(hours) })) {
    lines.take(piece);
    means.take(piece);
  }
  return { ...means.bounds(), hours, lines: lines.lines(), loggers: means.loggers() };
}

/** A line of hourly summaries, each standing in the middle of its hour: up to half an hour from either reading. */
const ofHours = (line: MoistLine, { start }: Intervals, intervals: Intervals): MoistLine => ({
  ...line,
  thinned: thin(samplesOf(line, start), intervals, line.longest + HOUR),
});

function* samplesOf({ thinned: { min, max } }: MoistLine, start: number) {
  for (let i = 0; i < min.length; i++)
    if (!Number.isNaN(min[i])) yield { time: start + (i + 0.5) * HOUR, min: min[i], max: max[i] };
}
