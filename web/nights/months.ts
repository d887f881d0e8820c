/** A stage's nights month by month: a year in one table would be as long as a street. */
import type { NightResult } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';

export interface Month {
  /** "2027-01" */
  readonly key: string;
  readonly title: string;
  readonly nights: readonly NightResult[];
}

/** In the order of the nights. */
export function monthsOf(nights: readonly NightResult[]): Month[] {
  const byMonth = new Map<string, NightResult[]>();
  for (const night of nights) {
    const key = night.date.slice(0, 7);
    byMonth.set(key, [...(byMonth.get(key) ?? []), night]);
  }
  return Array.from(byMonth, ([key, own]) => ({ key, title: monthName(key), nights: own }));
}

/** "January 2027: 20 of 31 nights used, 41 to 63 h each" */
export function monthSentence({ title, nights }: Month): string {
  const used = nights.filter((night) => night.used);
  const hours = used.flatMap(({ timeConstantH }) => (timeConstantH === null ? [] : [timeConstantH]));
  const counted = `${title}: ${used.length} of ${figures.count(nights.length, 'night')} used`;
  if (hours.length < 2) return counted;
  const [least, most] = [Math.min(...hours), Math.max(...hours)].map((it) => figures.decimal(it, 0));
  return `${counted}, time constants of ${least} to ${most} h`;
}

/** "2027-01" as "January 2027". */
const monthName = (key: string) => monthFormat.format(Date.parse(`${key}-15`));
const monthFormat = new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric', timeZone: 'UTC' });
