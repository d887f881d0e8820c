/** The readings of a house over any span, thinned to what a page can show. */
import { Hono } from 'hono';
import type { House } from '../../src/house.ts';
import { nightsBetween } from '../../src/sky/nights.ts';
import { instantOf } from '../../src/sky/zone.ts';
import { refused } from '../refused.ts';
import type { Services } from '../services.ts';
import type { Reading, StoredChannel } from '../store/reading.ts';
import { endOf, intervalsAsked, span, storedHouse, thinnedChannel } from './chartSpan.ts';
import type { ReadingsAnswer, ThinnedChannel } from './shapes.ts';
import { DAY, HOUR, type Intervals, isCoarse, isCoarsest, middles, thinner } from './thin.ts';
import { checkedQuery } from './validate.ts';

/** Readings further apart than this many steps are a gap. */
const STEPS_TO_A_GAP = 2.5;
/** More marks than this are a smear. */
const MOST_DOUBTED = 500;

export const readingsApi = ({ reading }: Pick<Services, 'reading'>) =>
  new Hono().get('/:id/readings', checkedQuery(span), (c) => {
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
      nights: nightsOf(id, house, Math.max(from, first), Math.min(to, last), reading),
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
  const addMiddle = (start: number, min: number, max: number) => add(start + summed / 2, min, max);
  const stretch = [number, intervals.start, endOf(intervals)] as const;
  if (summed === DAY) reading.eachDay(...stretch, addMiddle);
  else if (summed === HOUR) reading.eachHour(...stretch, addMiddle);
  else
    for (const { time, value } of reading.readings(...stretch))
      for (let i = 0; i < time.length; i++) add(time[i], value[i], value[i]);
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

/** The judged nights of the span; before the assessment, the nights as the sun has them, none of them used. */
function nightsOf(
  id: string,
  house: House,
  from: number,
  to: number,
  reading: Reading,
): ReadingsAnswer['nights'] {
  if (from > to) return [];
  if (reading.assessment(id) !== null) return reading.nights(id, from, to);
  return nightsBetween(from, to, house.location).map(({ date, sunset, sunrise }) => ({
    date,
    sunset,
    sunrise,
    used: false,
  }));
}
