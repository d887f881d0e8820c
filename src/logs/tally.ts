/** How often something was met, and on which lines first: one finding per kind, never one per row. */
export interface Tally {
  count: number;
  readonly lines: number[];
}

export const newTally = (): Tally => ({ count: 0, lines: [] });

export function mark(tally: Tally, line: number): void {
  tally.count++;
  if (tally.lines.length < LINES_SHOWN) tally.lines.push(line);
}

const LINES_SHOWN = 5;
