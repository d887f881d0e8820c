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
import { HOUR, type Intervals, isCoarse, middles, type Sample, thin } from './thin.ts';
import { checkedQuery } from './validate.ts';

/** Readings further apart than this many steps are a gap. */
const STEPS_TO_A_GAP = 2.5;
/** More marks than this are a smear. */
const MOST_DOUBTED = 500;

export const readingsApi = ({ reading }: Services) =>
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
  const coarse = isCoarse(intervals);
  const samples = (coarse ? hoursAsSamples : readingsAsSamples)(
    reading,
    number,
    intervals.start,
    endOf(intervals),
  );
  // An hour's summary stands at its middle, up to half an hour from either reading.
  const longest = STEPS_TO_A_GAP * spacing + (coarse ? HOUR : 0);
  return thinnedChannel(channel, thin(samples, intervals, longest));
}

function doubtedOf(instants: Iterable<number>): Pick<ThinnedChannel, 'doubted'> {
  const at: number[] = [];
  for (const instant of instants) {
    if (at.length === MOST_DOUBTED) return { doubted: { at, more: true } };
    at.push(instant);
  }
  return at.length === 0 ? {} : { doubted: { at, more: false } };
}

function* readingsAsSamples(reading: Reading, channel: number, from: number, to: number): Iterable<Sample> {
  for (const { time, value } of reading.readings(channel, from, to))
    for (let i = 0; i < time.length; i++) yield { time: time[i], min: value[i], max: value[i] };
}

function* hoursAsSamples(reading: Reading, channel: number, from: number, to: number): Iterable<Sample> {
  for (const { start, min, max } of reading.hours(channel, from, to))
    yield { time: start + HOUR / 2, min, max };
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
