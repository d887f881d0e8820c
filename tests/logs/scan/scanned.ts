/** Scans a text and says plainly what came of it, in the order in which it came. */
import type { ScanPlan } from '../../../src/logs/scan/plan.ts';
import { scanRows } from '../../../src/logs/scan/scanRows.ts';

export type Met =
  | { readonly line: number; readonly odd: string }
  | {
      readonly line: number;
      readonly parts: readonly number[];
      readonly clock: number;
      readonly offset: number;
      readonly values: readonly number[];
    };

/** @param end where an odd row really ends, if not at its line break */
export function scanned(
  content: string | Uint8Array,
  plan: ScanPlan,
  end: (from: number, to: number) => number = (_, to) => to,
): Met[] {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const met: Met[] = [];
  scanRows(bytes, 0, 1, plan, {
    rows: ({ count, line, parts, clock, offset, values }) => {
      for (let i = 0; i < count; i++)
        met.push({
          line: line[i],
          parts: [...parts.subarray(3 * i, 3 * i + 3)],
          clock: clock[i],
          offset: offset[i],
          values: values.map((column) => column[i]),
        });
    },
    odd: (from, to, line) => {
      const until = end(from, to);
      met.push({ line, odd: new TextDecoder().decode(bytes.subarray(from, until)) });
      return until;
    },
  });
  return met;
}

export const planOf = (changed: Partial<ScanPlan> = {}): ScanPlan => ({
  delimiter: ',',
  quotes: true,
  decimal: '.',
  width: 2,
  time: { kind: 'stamp', at: 0, shape: 'year first' },
  columns: [1],
  ...changed,
});
