/** Readings that a person should look at before they count: which, and why. Nothing is changed or taken out here. */
import { type DoubtKind, doubtKinds } from '../log.ts';
import { falseZeros } from './falseZero.ts';
import { impossibleReadings } from './impossible.ts';
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
  let rest = channels.map((channel, c) => withoutDoubts(channel, doubts[c]));
  doubtKinds.forEach((kind, k) => {
    const found = rest.map((channel) =>
      finders[kind](
        channel,
        rest.filter((other) => other !== channel),
      ),
    );
    rest = rest.map((channel, c) => {
      if (found[c].length === 0) return channel;
      for (const i of found[c]) doubts[c][channel.place[i]] = k + 1;
      return withoutDoubts(channels[c], doubts[c]);
    });
  });
  return doubts;
}

const finders: Readonly<Record<DoubtKind, Finder>> = {
  impossible: impossibleReadings,
  'power-on': powerOnReadings,
  'false-zero': falseZeros,
  stuck: stuckReadings,
  spike: spikes,
};
