/** Readings that a person should look at before they count: which, and why. Nothing is changed or taken out here. */
import { type DoubtKind, doubtKinds } from '../log.ts';
import { falseZeros } from './falseZero.ts';
import { powerOnReadings } from './powerOn.ts';
import { type Finder, type Series, withoutDoubts } from './series.ts';
import { spikes } from './spike.ts';
import { stuckReadings } from './stuck.ts';

export type { Series } from './series.ts';
export { COARSE_TEMPERATURE } from './stuck.ts';

/**
 * What speaks against each reading of one log file. The kinds are looked for in the order of `doubtKinds`, each among
 * the readings that no kind before it doubts, so that a zero beside a spike does not pass for its neighbour.
 *
 * @param channels all channels of ONE file: beside one another they are context
 * @returns per channel, one code per reading: 0 for nothing, else 1 + the kind's place in `doubtKinds`
 */
export function doubtsOf(channels: readonly Series[]): Uint8Array[] {
  const doubts = channels.map(({ value }) => new Uint8Array(value.length));
  doubtKinds.forEach((kind, k) => {
    const rest = channels.map((channel, c) => withoutDoubts(channel, doubts[c]));
    rest.forEach((channel, c) => {
      const others = rest.filter((other) => other !== channel);
      for (const i of finders[kind](channel, others)) doubts[c][channel.place[i]] = k + 1;
    });
  });
  return doubts;
}

const finders: Readonly<Record<DoubtKind, Finder>> = {
  'power-on': powerOnReadings,
  'false-zero': falseZeros,
  stuck: stuckReadings,
  spike: spikes,
};
