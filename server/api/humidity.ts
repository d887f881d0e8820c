/** Humidity over any span: as it was logged and what follows from it, thinned; and the mean of each night. */
import { Hono } from 'hono';
import type { z } from 'zod';
import { noSuchHouse, refused } from '../refused.ts';
import type { Services } from '../services.ts';
import { intervalsAsked, span, storedHouse, thinnedChannel } from './chartSpan.ts';
import type { HumidityAnswer, HumidityProgress } from './loggerShapes.ts';
import { type MoistHouse, outsideFileOf } from './moistAir.ts';
import { type MoistLine, moistLinesOver } from './moistLines.ts';
import { moistRecord } from './moistRecord.ts';
import { onceWaitedFor } from './onceWaitedFor.ts';
import { tellAsItGoes } from './tellAsItGoes.ts';
import { HOUR, type Intervals, isCoarse, middles, thin } from './thin.ts';
import { checkedQuery } from './validate.ts';

export const humidityApi = ({ reading, closing }: Services) => {
  const moistHouse = (id: string): MoistHouse => ({
    house: storedHouse(reading, id),
    channels: reading.channels(id),
    reading,
  });
  const records = onceWaitedFor(reading, (id, tell, signal) => moistRecord(moistHouse(id), tell, signal));
  const progressOf = (id: string): HumidityProgress => ({ work: records.workOf(id) });
  const answerOf = async (id: string, asked: z.output<typeof span>, signal: AbortSignal) => {
    const house = moistHouse(id);
    const { first, last, hours, lines: hourly, loggers } = await records.of(id, signal);
    if (loggers.length === 0)
      throw refused(404, 'no-humidity', 'No logger of this house has a humidity beside its temperature.');
    const intervals = intervalsAsked(asked, first, last);
    const lines = isCoarse(intervals)
      ? hourly.map((line) => ofHours(line, hours, intervals))
      : await moistLinesOver(house, intervals, { signal });
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
    return answer;
  };
  return new Hono()
    .get('/:id/humidity', checkedQuery(span), async (c) => {
      const { signal } = c.req.raw;
      try {
        return c.json(await answerOf(c.req.param('id'), c.req.valid('query'), signal));
      } catch (error) {
        if (signal.aborted) return new Response(null, { status: LEFT });
        throw error;
      }
    })
    .get('/:id/humidity/progress', (c) => {
      const id = c.req.param('id');
      if (reading.house(id) === null) throw noSuchHouse();
      return tellAsItGoes(c, {
        now: () => (reading.house(id) === null ? null : progressOf(id)),
        watch: (changed) => records.watch(id, changed),
        closing,
      });
    });
};

/** Whoever asked does not wait any more; nobody sees it. */
const LEFT = 499;

/** A line of hourly summaries, each standing in the middle of its hour: up to half an hour from either reading. */
const ofHours = (line: MoistLine, { start }: Intervals, intervals: Intervals): MoistLine => ({
  ...line,
  thinned: thin(
    { time: line.thinned.min.map((_, i) => start + (i + 0.5) * HOUR), ...line.thinned },
    intervals,
    line.longest + HOUR,
  ),
});
