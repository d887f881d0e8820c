/** Files that were dropped on one page and are taken in on the next. */
import type { PathOf } from './houseFolder.ts';

let waiting: readonly PathOf<File>[] = [];

export function handOn(found: readonly PathOf<File>[]): void {
  waiting = found;
}

/** Once: afterwards nothing waits any more. */
export function takeHandedOn(): readonly PathOf<File>[] {
  const found = waiting;
  waiting = [];
  return found;
}
