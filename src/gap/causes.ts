/** Why two ways to the heat loss may not meet, judged by which of them reads lower and by what is known of the house. */
import type { HeatLossEstimate, HeatLossNote } from '../heatloss/index.ts';
import { type Source, sourcesOf } from './sources.ts';

/** What of the house bears on it. */
export interface Conditions {
  /** How warm it is next door: null without a heated neighbour. */
  readonly neighbour: 'logged' | 'stated' | 'not known' | null;
  /** Weeks since wet trades ended; null where nothing was said. */
  readonly wetTradesWithinWeeks: number | null;
}

export type Cause =
  /** The lower one counts metered heat, and more heat came in than was metered. */
  | { readonly code: 'heat-not-counted' }
  /** The higher one counts metered heat, and not all of it warmed the house. */
  | { readonly code: 'heat-gone-elsewhere' }
  | { readonly code: 'sun-not-counted' /** Irradiance was given. */; readonly logged: boolean }
  | { readonly code: 'sun-on-logger'; readonly place: 'inside' | 'outside' }
  | { readonly code: 'neighbour-warms'; readonly known: 'stated' | 'not known' }
  | { readonly code: 'drying-draws-heat'; readonly weeks: number }
  /** Both take the layers as drawn, and read other parts of them. */
  | { readonly code: 'layers-unlike-drawn' }
  /** The house holds more, or less, heat than drawn. */
  | { readonly code: 'mass-unlike-drawn'; readonly more: boolean }
  | { readonly code: 'heated-night-strained' };

/** Wet plaster and screed still draw heat so long after they were laid [weeks]. PRACTICE. */
const DRYING = 26;

const SUN_NOT_LOGGED: readonly HeatLossNote['code'][] = [
  'no-irradiance',
  'sun-of-ordinary-sky',
  'sun-by-usual-sky',
];
const SUN_LEFT_IN: readonly HeatLossNote['code'][] = [
  ...SUN_NOT_LOGGED,
  'sun-not-separable',
  'sun-held-by-glass',
];
const STRAINED: readonly HeatLossNote['code'][] = [
  'heater-weak',
  'mass-not-settled',
  'wind-changed',
  'windy-night',
  'outdoors-drifted',
];

/** The usual explanations, those that the house's own conditions point to first; never empty. */
export function likelyCauses(
  lower: HeatLossEstimate,
  higher: HeatLossEstimate,
  { neighbour, wetTradesWithinWeeks: weeks }: Conditions,
): Cause[] {
  const meteredBelow = onMeter(lower) && !onMeter(higher);
  const meteredAbove = onMeter(higher) && !onMeter(lower);
  const daysBelow = onDays(lower) && !onDays(higher);
  const daysAbove = onDays(higher) && !onDays(lower);
  const causes: (Cause | false)[] = [
    says(lower, SUN_LEFT_IN) && { code: 'sun-not-counted', logged: !says(lower, SUN_NOT_LOGGED) },
    (neighbour === 'stated' || neighbour === 'not known') && { code: 'neighbour-warms', known: neighbour },
    meteredAbove && weeks !== null && weeks <= DRYING && { code: 'drying-draws-heat', weeks },
    (says(lower, STRAINED) || says(higher, STRAINED)) && { code: 'heated-night-strained' },
    (meteredBelow || daysBelow) && { code: 'heat-not-counted' },
    (meteredAbove || daysAbove) && { code: 'heat-gone-elsewhere' },
    daysBelow && { code: 'sun-on-logger', place: 'inside' },
    daysAbove && { code: 'sun-on-logger', place: 'outside' },
    onMass(lower) && !onMass(higher) && { code: 'mass-unlike-drawn', more: true },
    onMass(higher) && !onMass(lower) && { code: 'mass-unlike-drawn', more: false },
    onMass(lower) && onMass(higher) && { code: 'layers-unlike-drawn' },
  ];
  const found = causes.filter((cause) => cause !== false);
  return found.length > 0 ? found : [{ code: 'sun-not-counted', logged: true }];
}

const says = ({ notes }: HeatLossEstimate, codes: readonly HeatLossNote['code'][]) =>
  notes.some(({ code }) => codes.includes(code));
const rests = (on: HeatLossEstimate, source: Source) => sourcesOf(on).includes(source);
const onDays = (it: HeatLossEstimate) => rests(it, 'metered days');
const onMeter = (it: HeatLossEstimate) => onDays(it) || rests(it, 'heated night');
/** With metered days the network needs no mass. */
const onMass = (it: HeatLossEstimate) => rests(it, 'drawing') && !onDays(it);
