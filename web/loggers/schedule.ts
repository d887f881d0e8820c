/** A test laid on the clock: what is done at which instant, by the sun over this house. */
import type { StageResult } from '../../src/assessment.ts';
import { clockOffset } from '../../src/sheet/drawing/clock.ts';
import type { Place } from '../../src/sky/place.ts';
import { sunTimes } from '../../src/sky/sunTimes.ts';
import { dayAfter, instantOf } from '../../src/sky/zone.ts';
import { type TestStep, testErrands } from '../../src/words/testPlan.ts';

export type FurtherTest = NonNullable<StageResult['furtherTests']>[number];
export type PlannedTest = Pick<FurtherTest, 'test' | 'moreNights' | 'powerW' | 'durationH' | 'warmestC'>;

export interface TimedStep {
  /** [s] */
  readonly at: number;
  readonly step: TestStep;
}

export type Schedule =
  | { readonly kind: 'hours'; readonly steps: readonly TimedStep[]; readonly heating: Heating | null }
  /** Where no hour matters. */
  | { readonly kind: 'errand'; readonly text: string }
  | { readonly kind: 'no night' };

export interface Heating {
  /** From on to off, as it is wanted, and from off to sunrise [h]. */
  readonly hours: number;
  readonly wanted: number;
  readonly left: number;
}

const HOUR = 3600;
/** Steps of a clock that a person keeps [s]. */
const HALF_HOUR = 1800;
/** Heaters are not left alone: whoever stays with them goes home and to bed then. */
const LAST_OFF = '23:00';
const DAYS_OF_WEEK_TEST = 7;
/** What is believed of a heated night of which nothing more is known [h]. */
export const USUAL_HEATING = 6;

/** @param date of its first evening, "YYYY-MM-DD" */
export function scheduleOf(planned: PlannedTest, date: string, place: Place): Schedule {
  switch (planned.test) {
    case 'heated-night':
      return heatedNight((planned.durationH ?? USUAL_HEATING) * HOUR, date, place);
    case 'more-nights':
      return coolingNight(date, place);
    case 'metered-week':
      return { kind: 'hours', steps: meteredWeek(date, place), heating: null };
    case 'loggers-side-by-side':
      return {
        kind: 'hours',
        steps: [
          { at: instantOf(`${date}T18:00`, place.timeZone), step: 'side-by-side' },
          { at: instantOf(`${dayAfter(date)}T18:00`, place.timeZone), step: 'apart' },
        ],
        heating: null,
      };
    default:
      return { kind: 'errand', text: testErrands[planned.test] };
  }
}

/**
 * The heat comes on an hour after sunset, as the test was foretold, and goes off by bedtime: where that is too short it
 * comes on at sunset, and if need be is on for less than is wanted.
 */
function heatedNight(wanted: number, date: string, place: Place): Schedule {
  const night = nightOf(date, place);
  if (night === null) return { kind: 'no night' };
  const { sunset, sunrise } = night;
  const off = Math.min(
    halfHour('after', sunset + HOUR, place) + wanted,
    instantOf(`${date}T${LAST_OFF}`, place.timeZone),
  );
  const on = Math.min(
    off,
    Math.max(halfHour('after', sunset, place), halfHour('after', off - wanted, place)),
  );
  const steps: TimedStep[] = [
    { at: halfHour('before', sunset - 4 * HOUR, place), step: 'shut-down' },
    { at: sunset, step: 'sunset' },
    { at: on, step: 'heat-on' },
    { at: on + HALF_HOUR, step: 'look-after' },
    { at: halfHour('after', (on + off) / 2, place), step: 'half-way' },
    { at: off, step: 'heat-off' },
    { at: sunrise, step: 'sunrise' },
    { at: halfHour('after', sunrise + HOUR, place), step: 'end' },
  ];
  return {
    kind: 'hours',
    steps: steps.toSorted((a, b) => a.at - b.at),
    heating: { hours: (off - on) / HOUR, wanted: wanted / HOUR, left: (sunrise - off) / HOUR },
  };
}

function coolingNight(date: string, place: Place): Schedule {
  const night = nightOf(date, place);
  if (night === null) return { kind: 'no night' };
  const steps: TimedStep[] = [
    { at: halfHour('before', night.sunset - HOUR, place), step: 'evening-off' },
    { at: night.sunset, step: 'sunset' },
    { at: night.sunrise, step: 'sunrise' },
    { at: halfHour('after', night.sunrise + HOUR, place), step: 'morning-on' },
  ];
  return { kind: 'hours', steps, heating: null };
}

/** The full or half hour of the house's clock at an instant, or the next one before or after it [s]. */
function halfHour(side: 'before' | 'after', instant: number, { timeZone }: Place): number {
  const offset = clockOffset(instant, timeZone);
  const halves = (instant + offset) / HALF_HOUR;
  return (side === 'before' ? Math.floor(halves) : Math.ceil(halves)) * HALF_HOUR - offset;
}

function meteredWeek(date: string, { timeZone }: Place): TimedStep[] {
  const dates = Array.from({ length: DAYS_OF_WEEK_TEST }).reduce<string[]>(
    (all) => [...all, dayAfter(all[all.length - 1])],
    [date],
  );
  return dates.map((day, i) => ({
    at: instantOf(`${day}T09:00`, timeZone),
    step: i === 0 ? 'week-begins' : i === DAYS_OF_WEEK_TEST ? 'week-ends' : 'week-reading',
  }));
}

function nightOf(date: string, place: Place): { sunset: number; sunrise: number } | null {
  const { sunset } = sunTimes(date, place);
  const { sunrise } = sunTimes(dayAfter(date), place);
  return sunset === null || sunrise === null ? null : { sunset, sunrise };
}
