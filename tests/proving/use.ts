/** What people do in the house: heating by day, heaters left on by night, doors open while at work. */
import { random } from './random.ts';

export interface Span {
  readonly from: number;
  readonly to: number;
}

export interface MeteredHeat extends Span {
  /** Constant electric power [W], and how it is spread over the zones (sum 1). */
  readonly power: number;
  readonly shares: readonly number[];
}

/** Thermostat heating in a span of its own [°C]. */
export interface Heating extends Span {
  readonly setTemperature?: number;
}

export interface Use {
  /** Thermostat heating: on below the set temperature less half the band, off above it plus half. */
  readonly heating: readonly Heating[];
  /** [°C] */
  readonly setTemperature: number;
  /** [K] */
  readonly band: number;
  /** Of each zone [W]. */
  readonly heatingPower: readonly number[];
  /**
   * Heaters that could warm a room's air by more than this in one step [K] are turned up and down instead of on and
   * off; none are when left out.
   */
  readonly turnedAbove?: number;
  readonly metered: readonly MeteredHeat[];
  /** Of each zone, all the time [W]. */
  readonly constantGains: readonly number[];
  /** People in the house, who warm it unmetered; none when left out. */
  readonly people?: readonly MeteredHeat[];
  /** Doors open and shut: the leakage is multiplied by `workingLeakage`. */
  readonly working: readonly Span[];
  readonly workingLeakage: number;
}

const day = 86400;
const hour = 3600;

/** Nobody touches anything. */
export const leftAlone = (zones: number): Use => ({
  heating: [],
  setTemperature: 20,
  band: 1,
  heatingPower: new Array<number>(zones).fill(0),
  metered: [],
  constantGains: new Array<number>(zones).fill(0),
  working: [],
  workingLeakage: 1,
});

/**
 * Times of a building site: heating in the morning and again from midday into the evening on most
 * days, work on weekdays and some Saturdays.
 *
 * @param start midnight of the first day, local time being UTC
 * @param alone spans in which nothing is switched and nobody is there
 */
export function siteDays(seed: number, start: number, days: number, alone: readonly Span[]) {
  const draws = random(seed, 'site days');
  const heating: Span[] = [];
  const working: Span[] = [];
  const quarter = (hours: number) => Math.round(hours * 4) / 4;
  for (let k = 0; k < days; k++) {
    const midnight = start + k * day;
    const at = (hours: number) => midnight + quarter(hours) * hour;
    const morning = { from: at(6.5 + 0.3 * draws.normal()), to: at(9.5 + 0.5 * draws.normal()) };
    const evening = { from: at(12.5 + 0.8 * draws.normal()), to: at(20.2 + 0.4 * draws.normal()) };
    const heated = draws.uniform() < 0.93;
    if (heated && draws.uniform() < 0.85) heating.push(morning);
    if (heated) heating.push(evening);
    const weekday = new Date(midnight * 1000).getUTCDay();
    const works = weekday === 0 ? 0 : weekday === 6 ? 0.4 : 1;
    const hours = { from: at(8 + 0.2 * draws.normal()), to: at(16 + 0.5 * draws.normal()) };
    if (draws.uniform() < works) working.push(hours);
  }
  return { heating: without(heating, alone), working: without(working, alone) };
}

/** What is left of the spans outside of those that are taken out. */
export function without(spans: readonly Span[], out: readonly Span[]): Span[] {
  let left = [...spans];
  for (const gone of out)
    left = left.flatMap((span) =>
      [
        { from: span.from, to: Math.min(span.to, gone.from) },
        { from: Math.max(span.from, gone.to), to: span.to },
      ].filter((part) => part.from < part.to),
    );
  return left;
}

/** For steps that only go forward: the span that holds the instant, if any. */
export function follow<S extends Span>(spans: readonly S[]): (time: number) => S | undefined {
  const ordered = [...spans].sort((a, b) => a.from - b.from);
  let k = 0;
  return (time) => {
    while (k < ordered.length && ordered[k].to <= time) k++;
    return k < ordered.length && ordered[k].from <= time ? ordered[k] : undefined;
  };
}
