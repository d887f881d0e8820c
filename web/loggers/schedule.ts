/** A test laid on the clock: what is done at which instant, by the sun over this house. */
import type { StageResult } from '../../src/assessment.ts';
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
  /** `left`: from the heaters off to sunrise [h]; null without heaters. */
  | { readonly kind: 'hours'; readonly steps: readonly TimedStep[]; readonly left: number | null }
  /** Where no hour matters. */
  | { readonly kind: 'errand'; readonly text: string }
  | { readonly kind: 'no night' };

const HOUR = 3600;
const DAYS_OF_WEEK_TEST = 7;
/** What is believed of a heated night of which nothing more is known [h]. */
const USUAL_HEATING = 6;

/** @param date of its first evening, "YYYY-MM-DD" */
export function scheduleOf(planned: PlannedTest, date: string, place: Place): Schedule {
  switch (planned.test) {
    case 'heated-night':
      return heatedNight((planned.durationH ?? USUAL_HEATING) * HOUR, date, place);
    case 'more-nights':
      return coolingNight(date, place);
    case 'metered-week':
      return { kind: 'hours', steps: meteredWeek(date, place), left: null };
    case 'loggers-side-by-side':
      return {
        kind: 'hours',
        steps: [
          { at: instantOf(`${date}T18:00`, place.timeZone), step: 'side-by-side' },
          { at: instantOf(`${dayAfter(date)}T18:00`, place.timeZone), step: 'apart' },
        ],
        left: null,
      };
    default:
      return { kind: 'errand', text: testErrands[planned.test] };
  }
}

/** The heat comes on an hour after sunset, as the test was foretold. */
function heatedNight(heating: number, date: string, place: Place): Schedule {
  const night = nightOf(date, place);
  if (night === null) return { kind: 'no night' };
  const { sunset, sunrise } = night;
  const on = sunset + HOUR;
  const off = on + heating;
  const steps: TimedStep[] = [
    { at: sunset - 4 * HOUR, step: 'shut-down' },
    { at: sunset, step: 'sunset' },
    { at: on, step: 'heat-on' },
    { at: on + HOUR / 2, step: 'look-after' },
    { at: on + heating / 2, step: 'half-way' },
    { at: off, step: 'heat-off' },
    { at: sunrise, step: 'sunrise' },
    { at: sunrise + HOUR, step: 'end' },
  ];
  return { kind: 'hours', steps: steps.toSorted((a, b) => a.at - b.at), left: (sunrise - off) / HOUR };
}

function coolingNight(date: string, place: Place): Schedule {
  const night = nightOf(date, place);
  if (night === null) return { kind: 'no night' };
  const steps: TimedStep[] = [
    { at: night.sunset - HOUR, step: 'evening-off' },
    { at: night.sunset, step: 'sunset' },
    { at: night.sunrise, step: 'sunrise' },
    { at: night.sunrise + HOUR, step: 'morning-on' },
  ];
  return { kind: 'hours', steps, left: null };
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
