/** What the charts of the readings show, to take along, and as the rows of a table. */
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { dayAndClock } from '../../src/sheet/drawing/clock.ts';
import { isoTimeOf } from './localTime.ts';
import type { Family } from './readingsSeries.ts';
import type { View } from './view.ts';

/** Families with the lines that are switched on, within a view. */
export interface Shown {
  readonly readings: ReadingsAnswer;
  readonly families: readonly Family[];
  readonly view: View;
  readonly timeZone: string;
}

/**
 * The rows of the table, the header first: for each interval the least and the greatest reading of each line. Text
 * cells are text, figures are numbers: whoever writes them guards the former against being taken for formulas.
 */
export function shownRows({ readings, families, view, timeZone }: Shown): (string | number)[][] {
  const { time, channels } = readings;
  const lines = families.flatMap((family) => family.lines.map((line) => ({ ...line, family })));
  const head = lines.flatMap(({ label, family }) =>
    ['least', 'greatest'].map((end) => `${label}: ${family.title} (${family.unit}), ${end}`),
  );
  const within = time.flatMap((at, i) => (at >= view.from && at <= view.to ? [i] : []));
  return [
    ['Time', ...head],
    ...within.map((i) => [
      isoTimeOf(time[i], timeZone),
      ...lines.flatMap(({ channel }) => [channels[channel].min[i] ?? '', channels[channel].max[i] ?? '']),
    ]),
  ];
}

/** "house readings 2027-01-09 to 2027-02-13" */
export const nameOf = ({ view, timeZone }: Shown) =>
  `readings ${isoTimeOf(view.from, timeZone).slice(0, 10)} to ${isoTimeOf(view.to, timeZone).slice(0, 10)}`;

/** "9 Jan 12:00 to 13 Feb 12:00" */
export const spanWords = ({ view, timeZone }: Shown) =>
  `${dayAndClock(view.from, timeZone)} to ${dayAndClock(view.to, timeZone)}`;
