/** The lines of moist air: what each logger read and what follows from it, thinned to intervals. */
import { longestStepOf } from '../../src/series/steps.ts';
import { endOf } from './chartSpan.ts';
import type { LoggerAir, MoistHouse } from './moistAir.ts';
import { type MoistPiece, moistPieces, type Way } from './moistPieces.ts';
import { type Intervals, type Thinned, thinner } from './thin.ts';

export interface MoistLine extends Pick<LoggerAir, 'file' | 'room' | 'place'> {
  readonly quantity: 'temperature' | 'humidity' | 'absoluteHumidity' | 'dewPoint';
  /** Vapour over outdoors, which is an absolute humidity as well. */
  readonly over: boolean;
  readonly thinned: Thinned;
  /** Readings no further apart are joined [s]. */
  readonly longest: number;
}

/** Made from the readings themselves. */
export async function moistLinesOver(
  house: MoistHouse,
  intervals: Intervals,
  way: Way,
): Promise<MoistLine[]> {
  const collector = lineCollector(intervals, true);
  for await (const piece of moistPieces(house, { from: intervals.start, to: endOf(intervals) }, way))
    collector.take(piece);
  return collector.lines();
}

/** @param joined whether an interval between two readings gets the line between them */
export function lineCollector(intervals: Intervals, joined: boolean) {
  const found = new Map<string, { line: MoistLine; add: ReturnType<typeof thinner>['add'] }>();
  const lineOf = ({ file, room, place, air }: MoistPiece, quantity: MoistLine['quantity'], over: boolean) => {
    const key = `${file}\n${quantity}\n${over}`;
    const known = found.get(key);
    if (known !== undefined) return known;
    const longest = longestStepOf(air.time);
    const { add, thinned } = thinner(intervals, joined ? longest : 0);
    const made = { line: { file, room, place, quantity, over, thinned, longest }, add };
    found.set(key, made);
    return made;
  };
  return {
    take(piece: MoistPiece) {
      const { air, excess, begin, end } = piece;
      const put = (quantity: MoistLine['quantity'], over: boolean, values: Float64Array) => {
        const { add } = lineOf(piece, quantity, over);
        add({ time: air.time, min: values, max: values }, begin, end);
      };
      put('temperature', false, air.temperature);
      put('humidity', false, air.relativeHumidity);
      put('absoluteHumidity', false, air.absoluteHumidity);
      put('dewPoint', false, air.dewPoint);
      if (excess !== null) put('absoluteHumidity', true, excess);
    },
    lines: () => [...found.values()].map(({ line }) => line),
  };
}
