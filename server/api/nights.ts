/** The nights of a house as lines to draw, and the wind that blew in each. */
import { Hono } from 'hono';
import type { NightCurve } from '../../src/curves.ts';
import { noSuchHouse } from '../refused.ts';
import type { Services } from '../services.ts';
import type { Reading } from '../store/reading.ts';
import type { NightsAnswer } from './shapes.ts';

export const nightsApi = ({ reading }: Services) =>
  new Hono().get('/:id/nights', (c) => {
    const id = c.req.param('id');
    if (reading.house(id) === null) throw noSuchHouse();
    const curves = reading.curves(id).map((curve): NightCurve => JSON.parse(curve));
    const wind = windOf(curves, id, reading);
    const answer: NightsAnswer = { curves, ...(wind === null ? {} : { wind }) };
    return c.json(answer);
  });

/** The mean over the hours that begin in a night's window; over the whole night where it has none. */
function windOf(curves: readonly NightCurve[], id: string, reading: Reading): NightsAnswer['wind'] | null {
  const channel = reading.channels(id).find(({ quantity }) => quantity === 'windSpeed');
  if (channel === undefined) return null;
  const hours = reading.hours(channel.number, channel.first, channel.last);
  let passed = 0;
  return curves.map(({ date, window, sunset, sunrise }) => {
    const { from, to } = window ?? { from: sunset, to: sunrise };
    while (passed < hours.length && hours[passed].start < from) passed++;
    let [sum, n] = [0, 0];
    for (let i = passed; i < hours.length && hours[i].start < to; i++) {
      sum += hours[i].sum;
      n += hours[i].n;
    }
    return { date, meanMS: n === 0 ? null : sum / n };
  });
}
