/** What the readings and the moist air have in common: the span that is asked for, and a channel thinned to it. */
import { z } from 'zod';
import { reportedUnits } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import { perReportedUnit } from '../../src/report.ts';
import { noSuchHouse, refused } from '../refused.ts';
import type { Reading } from '../store/reading.ts';
import type { ThinnedChannel } from './shapes.ts';
import { type Intervals, intervalsOver, type Thinned } from './thin.ts';
import { queryNumber } from './validate.ts';

/** As far as a Date reaches [s]. */
const FARTHEST = 8.64e12;
const instant = queryNumber.pipe(z.number().min(-FARTHEST).max(FARTHEST));
export const span = z.strictObject({
  from: instant.optional(),
  to: instant.optional(),
  points: queryNumber.pipe(z.int().min(10).max(4000)).optional(),
});

/** @throws Refused without such a house */
export function storedHouse(reading: Reading, id: string): House {
  const json = reading.json(id);
  if (json === null) throw noSuchHouse();
  return JSON.parse(new TextDecoder().decode(json));
}

/**
 * All of the record where nothing else is asked for.
 *
 * @throws Refused where the span ends before it begins
 */
export function intervalsAsked(asked: z.output<typeof span>, first: number, last: number): Intervals {
  const { from = first, to = last, points = 1000 } = asked;
  if (from > to) throw refused(400, 'request-not-understood', 'Query from: it must not be later than “to”.');
  return intervalsOver(from, to, points);
}

export const endOf = ({ start, step, count }: Intervals) => start + count * step;

/** In the unit of the JSON; thousandths are more than anything worked out is known to. */
export function thinnedChannel(
  { file, column, room, place, quantity }: Omit<ThinnedChannel, 'unit' | 'min' | 'max' | 'doubted'>,
  { min, max }: Thinned,
  workedOut = false,
): ThinnedChannel {
  const scale = perReportedUnit[quantity] ?? 1;
  const reported = (value: number) => {
    if (Number.isNaN(value)) return null;
    return workedOut ? Math.round((value / scale) * 1000) / 1000 : value / scale;
  };
  return {
    file,
    column,
    room,
    place,
    quantity,
    unit: reportedUnits[quantity],
    min: Array.from(min, reported),
    max: Array.from(max, reported),
  };
}
