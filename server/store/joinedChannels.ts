/** The exports of one logger -> its channels, each as one series. */
import type { House } from '../../src/house.ts';
import type { LogChannel } from '../../src/logs/index.ts';
import { channelOf, type Entry, type ReadFile } from '../../src/record/index.ts';

/** A channel and the first of the files that it was joined from. */
export type JoinedChannel = LogChannel & { readonly file: string };

/**
 * Every channel of every export once. Of an instant that two exports have, the one named first is believed.
 *
 * @param exports those of one entry of the house, in the order in which it names them
 */
export function joinedChannels(exports: readonly ReadFile[], entry: Entry): JoinedChannel[] {
  const joined: JoinedChannel[] = [];
  const taken = new Set<LogChannel>();
  for (const { file, channels } of exports)
    for (const channel of channels) {
      if (taken.has(channel)) continue;
      const alone = exports.flatMap((reading) => {
        const own = counterpart(channel, channels, reading.channels);
        if (own === null || taken.has(own)) return [];
        taken.add(own);
        return [{ ...reading, channels: [own] }];
      });
      const series = channelOf(alone, channel.quantity, entry, []);
      if (series !== null) joined.push({ ...series, file });
    }
  return joined;
}

/** The same column in another export: of the same header, or the only one of its quantity in both. */
export function counterpart<C extends LogChannel>(
  { column, quantity }: LogChannel,
  among: readonly LogChannel[],
  others: readonly C[],
): C | null {
  const like = others.filter((it) => it.quantity === quantity);
  const only = like.length === 1 && among.filter((it) => it.quantity === quantity).length === 1;
  return like.find((it) => it.column === column) ?? (only ? like[0] : null);
}

/** Every entry of a house that may have logs, with where its readings belong. */
export const entriesOf = ({ loggers, weather = [], heat = [] }: House) => [
  ...loggers.map((entry) => ({ entry, room: entry.room ?? null, place: entry.place })),
  ...weather.map((entry) => ({ entry, room: null, place: 'weather' as const })),
  ...heat.map((entry) => ({ entry, room: null, place: 'heat' as const })),
];
