/** Exports of one logger as one series. */
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

/** Whether every reading of the later one comes after all of the first. */
export const goesOn = (first: LogChannel, later: LogChannel): boolean =>
  later.time[0] > first.time[first.time.length - 1];

/** What joining them one after the other gives, when each goes on where the one before ended. */
export function endToEnd(run: readonly LogChannel[]): LogChannel {
  if (run.length === 1) return run[0];
  const length = run.reduce((sum, { time }) => sum + time.length, 0);
  const all = {
    time: new Float64Array(length),
    value: new Float64Array(length),
    doubt: new Uint8Array(length),
  };
  let at = 0;
  for (const { time, value, doubt } of run) {
    all.time.set(time, at);
    all.value.set(value, at);
    all.doubt.set(doubt, at);
    at += time.length;
  }
  return { ...run[0], ...all };
}
