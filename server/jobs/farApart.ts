/** Readings that a clock which was not set has stamped: one in 1970 would have decades laid on the grid. */
import type { Message } from '../../src/assessment.ts';
import type { FileAccount } from '../../src/record/index.ts';
import { refused } from '../refused.ts';
import type { StoredChannel } from '../store/reading.ts';

const YEAR = 365.25 * 86_400; // [s]
/** No house is logged for longer. */
const LONGEST_RECORD = 20;
/** What is added without a person looking at it lies no further [years] from what is there. */
const FARTHEST = 2;

/** What speaks against a record of these files: that no clock which was set wrote all of them. */
export function farApart(accounts: readonly FileAccount[]): Message[] {
  const spans = accounts.flatMap(({ file, reading }) =>
    (reading.kind === 'read' ? reading.channels : []).flatMap(({ time }) =>
      time.length === 0 ? [] : [{ file, first: time[0], last: time[time.length - 1] }],
    ),
  );
  if (spans.length === 0) return [];
  const earliest = spans.reduce((a, b) => (b.first < a.first ? b : a));
  const latest = spans.reduce((a, b) => (b.last > a.last ? b : a));
  if (!isTooLong(earliest.first, latest.last)) return [];
  return [
    {
      code: 'readings-far-apart',
      text: `The readings begin on ${dayOf(earliest.first)} in “${earliest.file}” and end on ${dayOf(latest.last)} in “${latest.file}”: more than ${LONGEST_RECORD} years.`,
      remedy:
        'The clock of one was not set: give its "clockOffsetMin" in house.json, or leave the file or its first rows out.',
    },
  ];
}

/** Whether no house is logged from one instant to the other [s]. */
export const isTooLong = (first: number, last: number): boolean => last - first > LONGEST_RECORD * YEAR;

/**
 * @param imported a file that nobody looks at before it is kept
 * @param channels those of the house that it is added to
 * @throws Refused when its readings are years from those of the house
 */
export function refuseFarOff(
  { from, to }: { readonly from: string | null; readonly to: string | null },
  channels: readonly StoredChannel[],
): void {
  if (from === null || to === null || channels.length === 0) return;
  const first = Math.min(...channels.map((it) => it.first)) - FARTHEST * YEAR;
  const last = Math.max(...channels.map((it) => it.last)) + FARTHEST * YEAR;
  if (Date.parse(from) / 1000 >= first && Date.parse(to) / 1000 <= last) return;
  throw refused(
    422,
    'readings-far-off',
    `The readings of this file, from ${from.slice(0, 10)} to ${to.slice(0, 10)}, lie more than ${FARTHEST} years from all that this house has; nothing was stored.`,
    'Set the clock of the logger, and send them with their true times. If these are true, bring the file on the page of the house.',
  );
}

const dayOf = (time: number) => new Date(time * 1000).toISOString().slice(0, 10);
