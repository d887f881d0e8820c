/** Two exports of one logger as one series. */
import type { Quantity } from '../assessment.ts';
import type { LogChannel } from '../logs/index.ts';

export interface Joined {
  readonly channel: LogChannel;
  /** Instants that both have, and those of them with another value. */
  readonly common: number;
  readonly conflicts: number;
}

/** So far one value may be from itself when it was exported in another unit, in SI. */
const ROUNDING: Partial<Record<Quantity, number>> = { temperature: 0.06, dewPoint: 0.06, humidity: 0.006 };

/** In the order of time. For an instant that both have, the first is believed, unless only its reading is doubted. */
export function join(first: LogChannel, later: LogChannel): Joined {
  const most = first.time.length + later.time.length;
  const time = new Float64Array(most);
  const value = new Float64Array(most);
  const doubt = new Uint8Array(most);
  const apart = ROUNDING[first.quantity] ?? 0;
  let [i, j, n, common, conflicts] = [0, 0, 0, 0, 0];
  while (i < first.time.length || j < later.time.length) {
    const both = i < first.time.length && j < later.time.length && first.time[i] === later.time[j];
    const firstComes = j >= later.time.length || (i < first.time.length && first.time[i] <= later.time[j]);
    const firstIsGood = first.doubt[i] === 0 || later.doubt[j] !== 0;
    const [from, at] = firstComes && (!both || firstIsGood) ? [first, i] : [later, j];
    time[n] = from.time[at];
    value[n] = from.value[at];
    doubt[n++] = from.doubt[at];
    if (both) {
      common++;
      if (Math.abs(first.value[i] - later.value[j]) > apart && first.doubt[i] === later.doubt[j]) conflicts++;
    }
    if (firstComes) i++;
    if (!firstComes || both) j++;
  }
  const channel = {
    ...first,
    time: time.slice(0, n),
    value: value.slice(0, n),
    doubt: doubt.slice(0, n),
  };
  return { channel, common, conflicts };
}
