/** The readings of a stored channel in one piece. */
import type { LogChannel } from '../../src/logs/index.ts';
import type { Reading, StoredChannel } from '../store/reading.ts';

/**
 * The days from one instant to another and the nearest day with readings to either side; all of the channel where
 * nothing else is said. Doubts are marked, whatever their kind.
 */
export function storedSeries(
  reading: Reading,
  { number, column, quantity, ...bounds }: StoredChannel,
  { from, to }: { readonly from: number; readonly to: number } = { from: bounds.first, to: bounds.last },
): LogChannel {
  const { time, value } = reading.series(number, from, to);
  const doubt = new Uint8Array(time.length);
  let next = 0;
  for (const instant of time.length === 0 ? [] : reading.doubted(number, time[0], time[time.length - 1])) {
    while (time[next] < instant) next++;
    if (time[next] === instant) doubt[next] = 1;
  }
  return { column, quantity, time, value, doubt };
}
