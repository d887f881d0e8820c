/** Reading logs for several who ask, each log once for each way of reading it. */
import { readLog } from '../../src/logs/index.ts';

/** Reads a log as `readLog` does, and the same bytes in the same way only once. */
export function readingOnce(): typeof readLog {
  const known = new Map<string, Known>();
  return (file, bytes, hints) => {
    const way = JSON.stringify([file, hints]);
    const before = known.get(way);
    if (before?.bytes === bytes) return before.reading;
    const reading = readLog(file, bytes, hints);
    known.set(way, { bytes, reading });
    return reading;
  };
}

interface Known {
  readonly bytes: Uint8Array;
  readonly reading: ReturnType<typeof readLog>;
}
