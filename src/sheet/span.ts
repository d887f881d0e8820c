/** From when to when a stage lasted, in few words. */
import type { StageResult } from '../assessment.ts';
import { figures } from '../words/index.ts';
import { tied } from './drawing/tied.ts';

/** "9 to 25 January 2027", "28 January to 13 February 2027" */
export function spanOf({ from, to }: Pick<StageResult, 'from' | 'to'>): string {
  const [first, last] = [from, to].map((it) => it?.slice(0, 10) ?? null);
  if (first === null || last === null)
    return [first, last].map((it) => (it === null ? 'not known' : tied(figures.dayOfYear(it)))).join(' to ');
  if (first === last) return tied(figures.dayOfYear(last));
  const sameMonth = first.slice(0, 7) === last.slice(0, 7);
  const begin = sameMonth
    ? figures.day(first).split(' ')[0]
    : first.slice(0, 4) === last.slice(0, 4)
      ? figures.day(first)
      : figures.dayOfYear(first);
  return tied(`${begin} to ${figures.dayOfYear(last)}`);
}
