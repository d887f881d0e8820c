/** What each logger did, by its readings as they are stored. */
import { Hono } from 'hono';
import { reportedUnits } from '../../src/assessment.ts';
import { perReportedUnit } from '../../src/report.ts';
import { gapsOf, resolutionOf } from '../../src/series/steps.ts';
import { noSuchHouse } from '../refused.ts';
import type { Services } from '../services.ts';
import type { Reading, StoredChannel } from '../store/reading.ts';
import { keptForLast, nextTurn } from './keptForLast.ts';
import type { ChannelFacts, LoggersAnswer } from './loggerShapes.ts';
import { storedSeries } from './storedSeries.ts';

export const loggersApi = ({ reading }: Services) => {
  const factsOf = keptForLast(reading, async (id) => {
    const facts: ChannelFacts[] = [];
    for (const channel of reading.channels(id)) {
      facts.push(factsOfChannel(channel, reading));
      await nextTurn();
    }
    return facts;
  });
  return new Hono().get('/:id/loggers', async (c) => {
    const id = c.req.param('id');
    if (reading.house(id) === null) throw noSuchHouse();
    const answer: LoggersAnswer = { asked: Date.now() / 1000, channels: await factsOf(id) };
    return c.json(answer);
  });
};

function factsOfChannel(channel: StoredChannel, reading: Reading): ChannelFacts {
  const { file, column, quantity, spacing, first, last } = channel;
  const { time, value, doubt } = storedSeries(reading, channel);
  const { count, longest } = gapsOf(time);
  return {
    file,
    column,
    quantity,
    unit: reportedUnits[quantity],
    readings: time.length,
    first,
    last,
    every: spacing,
    resolution: resolutionOf(value) / (perReportedUnit[quantity] ?? 1),
    gaps: { count, longest },
    doubted: doubt.reduce((sum, mark) => sum + mark, 0),
  };
}
