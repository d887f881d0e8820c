/** Humidity over any span: as it was logged and what follows from it, thinned; and the mean of each night. */
import { Hono } from 'hono';
import { reportedUnits } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import { perReportedUnit } from '../../src/report.ts';
import { longestStepOf } from '../../src/series/steps.ts';
import { noSuchHouse, refused } from '../refused.ts';
import type { Services } from '../services.ts';
import type { HumidityAnswer, LoggerMoisture, MeanMoisture } from './loggerShapes.ts';
import { type LoggerAir, moistAirOf, outsideOf } from './moistAir.ts';
import { nightsOf, span } from './readings.ts';
import type { ThinnedChannel } from './shapes.ts';
import { type Intervals, intervalsOver, middles, type Sample, thin } from './thin.ts';
import { checkedQuery } from './validate.ts';

export const humidityApi = ({ reading }: Services) => {
  /** Of the house that was asked for last: who looks closer asks again and again. */
  let kept: { readonly content: string; readonly airs: readonly LoggerAir[] } | null = null;
  const airsOf = (id: string, house: House) => {
    const content = reading.house(id)?.content ?? '';
    if (kept?.content !== content) kept = { content, airs: moistAirOf(house, id, reading) };
    return kept.airs;
  };
  return new Hono().get('/:id/humidity', checkedQuery(span), (c) => {
    const id = c.req.param('id');
    const asked = c.req.valid('query');
    const json = reading.json(id);
    if (json === null) throw noSuchHouse();
    const house: House = JSON.parse(new TextDecoder().decode(json));
    const airs = airsOf(id, house);
    const first = Math.min(...airs.map(({ air }) => air.time[0]));
    const last = Math.max(...airs.map(({ air }) => air.time[air.time.length - 1]));
    if (airs.length === 0)
      throw refused(404, 'no-humidity', 'No logger of this house has a humidity beside its temperature.');
    const { from = first, to = last, points = 1000 } = asked;
    if (from > to)
      throw refused(400, 'request-not-understood', 'Query from: it must not be later than “to”.');
    const intervals = intervalsOver(from, to, points);
    const answer: HumidityAnswer = {
      first,
      last,
      time: middles(intervals),
      step: intervals.step,
      channels: airs.flatMap((it) => [
        thinned(it, 'temperature', it.air.temperature, intervals),
        thinned(it, 'humidity', it.air.relativeHumidity, intervals),
        thinned(it, 'absoluteHumidity', it.air.absoluteHumidity, intervals),
        thinned(it, 'dewPoint', it.air.dewPoint, intervals),
      ]),
      excess: airs.flatMap((it) =>
        it.excess === null ? [] : [thinned(it, 'absoluteHumidity', it.excess, intervals)],
      ),
      loggers: airs.map((it) => meansOf(it, nightsOf(id, house, first, last, reading))),
      outside: outsideOf(airs)?.file ?? null,
    };
    return c.json(answer);
  });
};

/** Thousandths are more than any of it is known to. */
const rounded = (value: number) => Math.round(value * 1000) / 1000;

type Shown = 'temperature' | 'humidity' | 'absoluteHumidity' | 'dewPoint';

function thinned(
  { file, room, place, air }: LoggerAir,
  quantity: Shown,
  values: Float64Array,
  intervals: Intervals,
): ThinnedChannel {
  const { min, max } = thin(samplesOf(air.time, values), intervals, longestStepOf(air.time));
  const scale = perReportedUnit[quantity] ?? 1;
  const reported = (value: number | null) => (value === null ? null : rounded(value / scale));
  return {
    file,
    column: quantity,
    room,
    place,
    quantity,
    unit: reportedUnits[quantity],
    min: min.map(reported),
    max: max.map(reported),
  };
}

function* samplesOf(time: Float64Array, values: Float64Array): Iterable<Sample> {
  for (let i = 0; i < time.length; i++)
    if (!Number.isNaN(values[i])) yield { time: time[i], min: values[i], max: values[i] };
}

function meansOf(it: LoggerAir, nights: ReturnType<typeof nightsOf>): LoggerMoisture {
  const { file, room, place, air } = it;
  const { time } = air;
  let next = 0;
  const until = (instant: number) => {
    while (next < time.length && time[next] < instant) next++;
    return next;
  };
  const ofNights = nights.flatMap(({ date, sunset, sunrise }) => {
    const [begin, end] = [until(sunset), until(sunrise)];
    return end > begin ? [{ date, ...meanOf(it, begin, end) }] : [];
  });
  return { file, room, place, mean: meanOf(it, 0, time.length), nights: ofNights };
}

/** Of the readings from `begin` to before `end`, of which there are some. */
function meanOf({ air, excess }: LoggerAir, begin: number, end: number): MeanMoisture {
  const mean = (values: Float64Array) => {
    const own = values.subarray(begin, end);
    return own.reduce((sum, it) => sum + it, 0) / own.length;
  };
  const meanKnown = (values: Float64Array) => {
    const known = values.subarray(begin, end).filter((it) => !Number.isNaN(it));
    return known.length === 0 ? null : known.reduce((sum, it) => sum + it, 0) / known.length;
  };
  const over = excess && meanKnown(excess);
  return {
    temperatureC: mean(air.temperature),
    humidityPercent: mean(air.relativeHumidity) * 100,
    absoluteGM3: mean(air.absoluteHumidity) * 1000,
    dewPointC: meanKnown(air.dewPoint),
    excessGM3: over === null ? null : over * 1000,
  };
}
