/** The readings of a house over any span, thinned to what a page can show. */
import { Hono } from 'hono';
import type { House } from '../../src/house.ts';
import { nightsBetween } from '../../src/sky/nights.ts';
import { instantOf } from '../../src/sky/zone.ts';
import { refused } from '../refused.ts';
import type { Services } from '../services.ts';
import type { Extremes } from '../store/hourBlob.ts';
import type { Reading, StoredChannel } from '../store/reading.ts';
import { endOf, intervalsAsked, span, storedHouse, thinnedChannel } from './chartSpan.ts';
import { keptForLast } from './keptForLast.ts';
import type { ReadingsAnswer, ThinnedChannel } from './shapes.ts';
import { DAY, HOUR, type Intervals, isCoarse, isCoarsest, middles, thinner } from './thin.ts';
import { checkedQuery } from './validate.ts';

/** Readings further apart than this many steps are a gap. */
const STEPS_TO_A_GAP = 2.5;
/** More marks than this are a smear. */
const MOST_DOUBTED = 500;

export const readingsApi = ({ reading }: Pick<Services, 'reading'>) => {
  const nightsOf = nightsIn(reading);
  return new Hono().get('/:id/readings', checkedQuery(span), async (c) => {
    const id = c.req.param('id');
    const asked = c.req.valid('query');
    const house = storedHouse(reading, id);
    const channels = reading.channels(id);
    const first = Math.min(...channels.map((channel) => channel.first));
    const last = Math.max(...channels.map((channel) => channel.last));
    if (channels.length === 0)
      throw refused(404, 'no-readings', 'None of the files of this house could be read.');
    const { from = first, to = last } = asked;
    const intervals = intervalsAsked(asked, first, last);
    const answer: ReadingsAnswer = {
      first,
      last,
      time: middles(intervals),
      step: intervals.step,
      channels: channels.map((channel) => ({
        ...thinned(channel, intervals, reading),
        ...doubtedOf(reading.doubted(channel.number, from, to)),
      })),
      nights: await nightsOf(id, Math.max(from, first), Math.min(to, last)),
      stages: (house.stages ?? []).map((stage) => ({ name: stage.name, ...spanOf(stage, house) })),
      notes: (house.notes ?? []).map(({ at, text }) => ({
        at: instantOf(at, house.location.timeZone),
        local: at,
        text,
      })),
      heating: (house.heat ?? []).flatMap(({ from, to }) =>
        from === undefined || to === undefined ? [] : [spanOf({ from, to }, house)],
      ),
      leftOut: house.loggers.flatMap(({ file, leaveOut = [] }) =>
        leaveOut.map((it) => ({ file, ...spanOf(it, house), why: it.why ?? null })),
      ),
    };
    return c.json(answer);
  });
};

/** Local times of house.json as instants [s]. */
const spanOf = ({ from, to }: { readonly from: string; readonly to: string }, { location }: House) => ({
  from: instantOf(from, location.timeZone),
  to: instantOf(to, location.timeZone),
});

function thinned(channel: StoredChannel, intervals: Intervals, reading: Reading): ThinnedChannel {
  const { number, spacing } = channel;
  // A summary stands at the middle of its hour or day, up to half of that from either reading.
  const summed = isCoarsest(intervals) ? DAY : isCoarse(intervals) ? HOUR : 0;
  const { add, thinned } = thinner(intervals, STEPS_TO_A_GAP * spacing + summed);
  const addMiddles = ({ start, min, max }: Extremes) =>
    add({ time: start.map((it) => it + summed / 2), min, max });
  const stretch = [number, intervals.start, endOf(intervals)] as const;
  if (summed === DAY) addMiddles(reading.dayExtremes(...stretch));
  else if (summed === HOUR) addMiddles(reading.hourExtremes(...stretch));
  else for (const { time, value } of reading.readings(...stretch)) add({ time, min: value, max: value });
  return thinnedChannel(channel, thinned);
}

function doubtedOf(instants: Iterable<number>): Pick<ThinnedChannel, 'doubted'> {
  const at: number[] = [];
  for (const instant of instants) {
    if (at.length === MOST_DOUBTED) return { doubted: { at, more: true } };
    at.push(instant);
  }
  return at.length === 0 ? {} : { doubted: { at, more: false } };
}

/** The judged nights of a span; before the assessment, the nights as the sun has them, none of them used. */
function nightsIn(reading: Reading) {
  // Ten years of sunsets take as long as all of the readings.
  const ofSun = keptForLast(reading, async (id) => {
    const channels = reading.channels(id);
    const first = Math.min(...channels.map((channel) => channel.first));
    const last = Math.max(...channels.map((channel) => channel.last));
    return nightsBetween(first, last, storedHouse(reading, id).location).map(({ date, sunset, sunrise }) => ({
      date,
      sunset,
      sunrise,
      used: false,
    }));
  });
  return async (id: string, from: number, to: number): Promise<ReadingsAnswer['nights']> => {
    if (from > to) return [];
    if (reading.isAssessed(id)) return reading.nights(id, from, to);
    return (await ofSun(id)).filter(({ sunset, sunrise }) => sunset <= to && sunrise >= from);
  };
}
