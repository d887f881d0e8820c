/** Reading logs for several who ask, each log once for each way of reading it. */
import { readLog } from '../../src/logs/index.ts';

/**
 * Reads a log as `readLog` does, and the same bytes in the same way only once. Once the other files have told the order
 * of day and month, the log is so read, also for a caller that does not know of them.
 */
export function readingOnce(): typeof readLog {
  const known = new Map<string, Known>();
  return (file, bytes, hints) => {
    const { orderOfOthers: order, ...own } = hints;
    const way = JSON.stringify([file, own]);
    const before = known.get(way);
    if (before?.bytes === bytes && (order === undefined || order === before.order)) return before.reading;
    const reading = readLog(file, bytes, hints);
    known.set(way, { bytes, order, reading });
    return reading;
  };
}

interface Known {
  readonly bytes: Uint8Array;
  readonly order: unknown;
  readonly reading: ReturnType<typeof readLog>;
}
