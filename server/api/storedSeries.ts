/** The readings of a stored channel in one piece. */
import type { LogChannel } from '../../src/logs/index.ts';
import type { Reading, StoredChannel } from '../store/reading.ts';

/** All of a channel; doubts are marked, whatever their kind. */
export function storedSeries(
  reading: Reading,
  { number, column, quantity, first, last }: StoredChannel,
): LogChannel {
  const days = reading.readings(number, first, last);
  const length = days.reduce((sum, day) => sum + day.time.length, 0);
  const [time, value] = [new Float64Array(length), new Float64Array(length)];
  let at = 0;
  for (const day of days) {
    time.set(day.time, at);
    value.set(day.value, at);
    at += day.time.length;
  }
  const doubted = new Set(reading.doubted(number, first, last));
  return { column, quantity, time, value, doubt: Uint8Array.from(time, (t) => (doubted.has(t) ? 1 : 0)) };
}
