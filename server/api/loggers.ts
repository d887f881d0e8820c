/** What each logger did, by its readings as they are stored. */
import { Hono } from 'hono';
import { reportedUnits } from '../../src/assessment.ts';
import { perReportedUnit } from '../../src/report.ts';
import { gapsOf, resolutionOf } from '../../src/series/steps.ts';
import { noSuchHouse } from '../refused.ts';
import type { Services } from '../services.ts';
import type { Reading, StoredChannel } from '../store/reading.ts';
import type { ChannelFacts, LoggersAnswer } from './loggerShapes.ts';
import { storedSeries } from './storedSeries.ts';

export const loggersApi = ({ reading }: Services) =>
  new Hono().get('/:id/loggers', (c) => {
    const id = c.req.param('id');
    if (reading.house(id) === null) throw noSuchHouse();
    const answer: LoggersAnswer = {
      asked: Date.now() / 1000,
      channels: reading.channels(id).map((channel) => factsOf(channel, reading)),
    };
    return c.json(answer);
  });

function factsOf(channel: StoredChannel, reading: Reading): ChannelFacts {
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
