/** One logger's readings as the house wants them: all its exports, its offsets, and what is kept out or put back. */
import type { Quantity } from '../assessment.ts';
import type { House, Logger, WeatherFile } from '../house.ts';
import type { LogChannel, LogFinding } from '../logs/index.ts';
import { spacingOf } from '../series/steps.ts';
import { instantOf } from '../sky/zone.ts';
import type { RecordFinding } from './finding.ts';
import { pick } from './pick.ts';
import { type Entry, filesOf, type ReadFile, type Shelf } from './shelf.ts';

/** The exports of one entry that could be read, the one that the house names first at the head. */
export function exportsOf(entry: Entry, shelf: Shelf): ReadFile[] {
  return filesOf(entry).flatMap((file) => shelf.read(file, entry) ?? []);
}

/** One quantity out of all exports of an entry; null where none has it. */
export function channelOf(
  exports: readonly ReadFile[],
  quantity: Quantity,
  entry: Entry,
  findings: (RecordFinding | LogFinding)[],
): LogChannel | null {
  const channels = exports.flatMap((reading) => pick(reading, quantity, entry, findings) ?? []);
  const [first, ...later] = channels;
  if (first === undefined) return null;
  return later.reduce((all, more) => {
    const { channel, conflicts } = joined(all, more);
    const where = { file: exports[0].file, column: first.column };
    if (conflicts > 0)
      findings.push({ code: 'exports-conflict', count: conflicts, first: exports[0].file, where });
    return channel;
  }, first);
}

/** Both in the order of time; for an instant that both have, the first is believed. */
function joined(first: LogChannel, later: LogChannel): { channel: LogChannel; conflicts: number } {
  const most = first.time.length + later.time.length;
  const time = new Float64Array(most);
  const value = new Float64Array(most);
  const doubt = new Uint8Array(most);
  let [i, j, n, conflicts] = [0, 0, 0, 0];
  while (i < first.time.length || j < later.time.length) {
    const fromFirst = j >= later.time.length || (i < first.time.length && first.time[i] <= later.time[j]);
    const [from, at] = fromFirst ? [first, i] : [later, j];
    if (fromFirst && j < later.time.length && later.time[j] === first.time[i]) {
      if (later.value[j] !== first.value[i]) conflicts++;
      j++;
    }
    time[n] = from.time[at];
    value[n] = from.value[at];
    doubt[n++] = from.doubt[at];
    if (fromFirst) i++;
    else j++;
  }
  const channel = { ...first, time: time.slice(0, n), value: value.slice(0, n), doubt: doubt.slice(0, n) };
  return { channel, conflicts };
}

/** The readings that are used: doubted ones and those left out by hand gone, those put back among them. */
export function usedReadings(
  channel: LogChannel,
  logger: Logger,
  house: House,
  findings: (RecordFinding | LogFinding)[],
): LogChannel {
  const leftOut = within(logger.leaveOut, house);
  const putBack = within(logger.putBack, house);
  const { time, doubt } = channel;
  const stays = new Uint8Array(time.length);
  let returned = 0;
  for (let i = 0; i < time.length; i++) {
    if (leftOut(time[i])) continue;
    if (doubt[i] !== 0) {
      if (!putBack(time[i])) continue;
      returned++;
    }
    stays[i] = 1;
  }
  if (returned > 0)
    findings.push({
      code: 'readings-put-back',
      count: returned,
      where: { file: logger.file, column: channel.column },
    });
  const used = onlyThose(channel, stays);
  const offset = channel.quantity === 'temperature' ? (logger.temperatureOffsetK ?? 0) : 0;
  return offset === 0 ? used : { ...used, value: used.value.map((v) => v + offset) };
}

/** Whether an instant lies in one of the spans. */
function within(spans: Logger['leaveOut'] = [], { location }: House): (t: number) => boolean {
  const bounds = spans.map(({ from, to }) => ({
    from: instantOf(from, location.timeZone),
    to: instantOf(to, location.timeZone),
  }));
  return bounds.length === 0 ? () => false : (t) => bounds.some(({ from, to }) => t >= from && t <= to);
}

/** Those readings of a channel that nothing speaks against. */
export const trusted = (channel: LogChannel): LogChannel =>
  onlyThose(
    channel,
    channel.doubt.map((code) => (code === 0 ? 1 : 0)),
  );

/** The readings marked with 1. Loops, because a year of minutes passes here. */
export function onlyThose(channel: LogChannel, stays: Uint8Array): LogChannel {
  let count = 0;
  for (let i = 0; i < stays.length; i++) count += stays[i];
  if (count === stays.length) return channel;
  const time = new Float64Array(count);
  const value = new Float64Array(count);
  const doubt = new Uint8Array(count);
  for (let i = 0, n = 0; i < stays.length; i++) {
    if (stays[i] === 0) continue;
    time[n] = channel.time[i];
    value[n] = channel.value[i];
    doubt[n++] = channel.doubt[i];
  }
  return { ...channel, time, value, doubt };
}

/**
 * Interval means moved to the middle of their interval. Loggers take instants unless the house says how they are
 * stamped; weather comes as means stamped at their end unless it says otherwise.
 */
export function centred(channel: LogChannel, entry: Logger | WeatherFile): LogChannel {
  const stamp = entry.read?.stamp ?? ('place' in entry ? null : 'end');
  if (stamp === null) return channel;
  const half = spacingOf(channel.time) / 2;
  return { ...channel, time: channel.time.map((t) => (stamp === 'end' ? t - half : t + half)) };
}
