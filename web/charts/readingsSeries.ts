/** The thinned readings as charts: which channels share one, how each line is told from the others, its columns. */

import type { ReadingsAnswer, ThinnedChannel } from '../../server/api/shapes.ts';
import type { Quantity } from '../../src/assessment.ts';
import { quantities } from '../parts/quantities.ts';
import { orGap } from './nightSeries.ts';

/** Channels of one quantity: they share a chart. */
export interface Family {
  readonly quantity: Quantity;
  readonly title: string;
  readonly unit: string;
  readonly lines: readonly Line[];
  /** Bands with a line midway, told apart by its dash and by its name at its end; else the band's two edges. */
  readonly midway?: boolean;
}

export type InkName = 'ember' | 'frost' | 'graphite';

export interface Line {
  /** By what it is switched off, the same in every answer. */
  readonly key: string;
  /** Where the channel stands in the answer. */
  readonly channel: number;
  readonly label: string;
  readonly ink: InkName;
  /** Lengths of strokes and gaps [px]; empty for a solid line. */
  readonly dash: readonly number[];
}

const places: { readonly [P in ThinnedChannel['place']]: { readonly name: string; readonly ink: InkName } } =
  {
    inside: { name: 'Inside', ink: 'ember' },
    heat: { name: 'Heater', ink: 'ember' },
    outside: { name: 'Outside', ink: 'frost' },
    weather: { name: 'Weather', ink: 'graphite' },
    void: { name: 'Void', ink: 'graphite' },
    surface: { name: 'Surface', ink: 'graphite' },
    adjacent: { name: 'Next door', ink: 'graphite' },
  };

/** Only the first line inside is solid; outside and the rest are broken wherever there is a second line. */
const dashes: { readonly [I in InkName]: readonly (readonly number[])[] } = {
  ember: [[], [12, 4], [3, 3], [12, 3, 2, 3], [18, 3, 2, 3, 2, 3], [7, 7]],
  frost: [
    [6, 4],
    [6, 3, 1, 3],
    [14, 5],
  ],
  graphite: [
    [2, 4],
    [9, 4, 2, 4],
    [5, 5],
    [14, 3],
    [1, 3],
  ],
};

/** The families that the answer has, in a fixed order. */
export function familiesOf(channels: readonly ThinnedChannel[]): Family[] {
  const present = Object.keys(quantities) as Quantity[];
  return present.flatMap((quantity) => {
    const own = [...channels.entries()].filter(([, channel]) => channel.quantity === quantity);
    if (own.length === 0) return [];
    return [{ quantity, ...quantities[quantity], lines: linesOf(own) }];
  });
}

function linesOf(own: readonly (readonly [number, ThinnedChannel])[]): Line[] {
  const names = own.map(([, { room, place }]) => room ?? places[place].name);
  const drawn: { [I in InkName]: number } = { ember: 0, frost: 0, graphite: 0 };
  return own.map(([channel, { place, file, column }], i) => {
    const { ink } = places[place];
    const patterns = dashes[ink];
    const dash = own.length === 1 ? [] : patterns[drawn[ink] % patterns.length];
    drawn[ink] += 1;
    const alike = names.filter((name) => name === names[i]).length;
    const label = alike > 1 ? `${names[i]} (${file}, ${column})` : names[i];
    return { key: `${file}, ${column}`, channel, label, ink, dash };
  });
}

type Column = (number | null)[];

/** The columns of a family: the instants, then for each line its maxima, its minima and, where it is drawn, its middle. */
export const columnsOf = (
  { time, channels }: ReadingsAnswer,
  { lines, midway }: Family,
): [number[], ...Column[]] => [
  [...time],
  ...lines.flatMap(({ channel }) => {
    const [max, min] = [channels[channel].max.map(orGap), channels[channel].min.map(orGap)];
    return midway ? [max, min, max.map((it, i) => middleOf(it, min[i]))] : [max, min];
  }),
];

const middleOf = (a: number | null, b: number | null) => (a === null || b === null ? null : (a + b) / 2);

/** Where the columns of a line stand. */
export function columnsAt({ midway }: Family, line: number) {
  const most = 1 + line * (midway ? 3 : 2);
  return { most, least: most + 1, all: midway ? [most, most + 1, most + 2] : [most, most + 1] };
}

/** Readings with a gap on both sides: no line shows them, so they are drawn as dots. */
export const alone = (column: readonly (number | null | undefined)[]): number[] =>
  [...column.keys()].filter((i) => isThere(column[i]) && !isThere(column[i - 1]) && !isThere(column[i + 1]));

const isThere = (value: number | null | undefined) => value !== null && value !== undefined;

/** What was read of a channel, for the table behind the charts. */
export interface ChannelAccount {
  readonly file: string;
  readonly label: string;
  readonly title: string;
  readonly unit: string;
  /** Null without a reading. */
  readonly least: number | null;
  readonly most: number | null;
}

export const accountsOf = ({ channels }: ReadingsAnswer): ChannelAccount[] =>
  familiesOf(channels).flatMap(({ title, unit, lines }) =>
    lines.map(({ channel, label }) => {
      const { file, min, max } = channels[channel];
      return { file, label, title, unit, least: extreme(min, Math.min), most: extreme(max, Math.max) };
    }),
  );

function extreme(values: readonly (number | null)[], of: (a: number, b: number) => number): number | null {
  const known = values.map(orGap).filter((it) => it !== null);
  return known.length === 0 ? null : known.reduce((a, b) => of(a, b));
}
