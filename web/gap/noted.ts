/** Which of the notes belong to a part of the page. */
import type { Message } from '../../src/assessment.ts';

/** Those of these codes, in the order of the notes. */
export const noted = (
  notes: readonly Message[] | undefined,
  ...codes: readonly string[]
): readonly Message[] => notes?.filter(({ code }) => codes.includes(code)) ?? [];

/** All others. */
export const notedOtherwise = (notes: readonly Message[], ...codes: readonly string[]): readonly Message[] =>
  notes.filter(({ code }) => !codes.includes(code));
