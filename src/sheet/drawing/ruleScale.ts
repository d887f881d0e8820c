/** The graduations of a ruler: where it begins and ends, and what is written on it. */
import { figures } from '../../words/index.ts';

export interface Graduation {
  readonly value: number;
  /** From the ruler's beginning, 0 to 1. */
  readonly at: number;
  /** Long ones carry a figure. */
  readonly length: 'long' | 'middle' | 'short';
  /** The figure; empty unless long. */
  readonly text: string;
  /** Whether the figure is also written where there is little room. */
  readonly always: boolean;
}

export interface RuleScale {
  readonly from: number;
  readonly to: number;
  readonly graduations: readonly Graduation[];
}

/** At most so many long divisions on a ruler. */
const MOST_DIVISIONS = 8;
/** How many long divisions a narrow screen has the room to write figures at. */
const NARROW_DIVISIONS = 4;

/**
 * A ruler on which all the values lie, with a long graduation at each end.
 *
 * @param values at least one, finite, in the unit of the ruler
 */
export function ruleScale(values: readonly number[]): RuleScale {
  const [least, most] = spread(Math.min(...values), Math.max(...values));
  const division = niceDivision((most - least) / MOST_DIVISIONS);
  const first = Math.floor(least / division + 1e-9);
  const last = Math.ceil(most / division - 1e-9);
  const [from, to] = [first * division, last * division];
  const parts = partsOf(division);
  const every = Math.ceil((last - first) / NARROW_DIVISIONS);
  const graduations = Array.from({ length: (last - first) * parts + 1 }, (_, i): Graduation => {
    const long = i % parts === 0;
    const value = (first + i / parts) * division;
    return {
      value,
      at: (value - from) / (to - from),
      length: long ? 'long' : parts === 10 && i % 5 === 0 ? 'middle' : 'short',
      text: long ? figures.decimal(value, decimalsOf(division)) : '',
      always: (i / parts) % every === 0,
    };
  });
  return { from, to, graduations };
}

/** Where a value lies on the ruler, from 0 to 1. */
export const placeOn = ({ from, to }: RuleScale, value: number) => (value - from) / (to - from);

/** A little room on both sides; never across zero for values that are all on one side of it. */
function spread(least: number, most: number): [number, number] {
  // Values equal but for rounding are one value.
  const room =
    most - least > 1e-6 * Math.max(Math.abs(least), Math.abs(most))
      ? (most - least) * 0.03
      : Math.max(Math.abs(most) * 0.2, 1e-6);
  return [
    least >= 0 ? Math.max(0, least - room) : least - room,
    most <= 0 ? Math.min(0, most + room) : most + room,
  ];
}

/** The smallest of 1, 2, 5 times a power of ten that is at least so much. */
function niceDivision(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least) + 1e-9);
  return ([1, 2, 5].find((times) => times * power >= least * (1 - 1e-9)) ?? 10) * power;
}

const leadingDigit = (division: number) =>
  Math.round(division / 10 ** Math.floor(Math.log10(division) + 1e-9));
/** Twenties are parted in four fives, tens in ten ones, fifties in five tens. */
const partsOf = (division: number) => ({ 1: 10, 2: 4 })[leadingDigit(division)] ?? 5;
const decimalsOf = (division: number) => Math.max(0, -Math.floor(Math.log10(division) + 1e-9));
