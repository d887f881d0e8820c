/** What was, what is, and what was taken back: edits that can be undone. */
export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  /** What was taken back, the latest first. */
  readonly future: readonly T[];
  /** What was edited last; typing on in the same field is the same edit. */
  readonly at: string | null;
}

/** More steps than anybody goes back. */
const LONGEST = 200;

export const begin = <T>(present: T): History<T> => ({ past: [], present, future: [], at: null });

/**
 * @param at names the field that is typed in, so that its letters are one edit; null for an edit of its own
 */
export function edited<T>({ past, present, at: before }: History<T>, next: T, at: string | null): History<T> {
  const goesOn = at !== null && at === before && past.length > 0;
  return { past: goesOn ? past : [...past, present].slice(-LONGEST), present: next, future: [], at };
}

/** As it was before the last edit; unchanged when there was none. */
export function undone<T>(history: History<T>): History<T> {
  const { past, present, future } = history;
  const before = past.at(-1);
  if (before === undefined) return history;
  return { past: past.slice(0, -1), present: before, future: [present, ...future], at: null };
}

/** The edit that was taken back last, made again; unchanged when there is none. */
export function redone<T>(history: History<T>): History<T> {
  const { past, present, future } = history;
  if (future.length === 0) return history;
  return { past: [...past, present], present: future[0], future: future.slice(1), at: null };
}
