/** That the day is over until which a house was to be kept; nothing before that. */
import { figures } from '../../src/words/index.ts';

export function KeptTooLong({ until }: { readonly until: string | undefined }) {
  if (until === undefined || !isOver(until)) return null;
  return <strong>It was to be kept until {figures.dayOfYear(until)}.</strong>;
}

/** @param date as "2027-02-14" */
export const isOver = (date: string) => date < new Date().toISOString().slice(0, 10);
