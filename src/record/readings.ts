/** One logger's readings as the house wants them: all its exports, its offsets, and what is kept out or put back. */
import type { Quantity } from '../assessment.ts';
import type { House, Logger, WeatherFile } from '../house.ts';
import type { LogChannel, LogFinding } from '../logs/index.ts';
import { firstFrom } from '../series/firstFrom.ts';
import { spacingOf } from '../series/steps.ts';
import { dayAfter, instantOf } from '../sky/zone.ts';
import type { RecordFinding } from './finding.ts';
import { endToEnd, goesOn, join } from './join.ts';
import { pick } from './pick.ts';
import { type Entry, filesOf, type ReadFile, type Shelf } from './shelf.ts';

/** The exports of one entry that could be read, the one that the house names first at the head. */
export function exportsOf(entry: Entry, shelf: Shelf): ReadFile[] {
  return filesOf(entry).flatMap((file) => shelf.read(file, entry) ?? []);
}

/** One quantity out of all exports of an entry; null where none has it. What is plainly another logger's is left out. */
export function channelOf(
  exports: readonly ReadFile[],
  quantity: Quantity,
  entry: Entry,
  findings: (RecordFinding | LogFinding)[],
): LogChannel | null {
  const found = exports.flatMap((reading) => {
    const channel = pick(reading, quantity, entry, findings);
    return channel === null ? [] : [{ file: reading.file, channel }];
  });
  const [first, ...later] = found;
  if (first === undefined) return null;
  // Those that go on where the one before ended, laid end to end at once: there may be hundreds.
  let run = [first.channel];
  for (const { file, channel: more } of later) {
    if (goesOn(run[run.length - 1], more)) {
      run.push(more);
      continue;
    }
    const all = endToEnd(run);
    const { channel, common, conflicts } = join(all, more);
    if (common >= ENOUGH && conflicts > common / 2) {
      const where = { file, column: more.column };
      findings.push({ code: 'not-the-same-logger', common, conflicts, first: first.file, where });
      run = [all];
      continue;
    }
    const where = { file: first.file, column: first.channel.column };
    if (conflicts > 0)
      findings.push({ code: 'exports-conflict', count: conflicts, first: first.file, where });
    run = [channel];
  }
  return endToEnd(run);
}

/** From so many common instants on it is no chance that most of them differ. */
const ENOUGH = 10;

/** The readings that are used: doubted ones and those left out by hand gone, those put back among them. */
export function usedReadings(
  channel: LogChannel,
  logger: Logger,
  house: House,
  findings: (RecordFinding | LogFinding)[],
): LogChannel {
  const leftOut = spansOf(logger.leaveOut, house);
  const putBack = spansOf(logger.putBack, house);
  const { time, doubt } = channel;
  const stays = unmarked(doubt);
  for (const span of putBack) stays.fill(1, ...placesIn(span, time));
  for (const span of leftOut) stays.fill(0, ...placesIn(span, time));
  const where = { file: logger.file, column: channel.column };
  let returned = 0;
  for (let i = 0; i < doubt.length; i++) if (doubt[i] !== 0 && stays[i] === 1) returned++;
  if (returned > 0) findings.push({ code: 'readings-put-back', count: returned, where });
  for (const span of leftOut.filter((it) => time.subarray(...placesIn(it, time)).length === 0))
    findings.push({ code: 'span-without-effect', key: 'leaveOut', from: span.said, where });
  for (const span of putBack.filter((it) =>
    doubt.subarray(...placesIn(it, time)).every((code) => code === 0),
  ))
    findings.push({ code: 'span-without-effect', key: 'putBack', from: span.said, where });
  const used = onlyThose(channel, stays);
  const offset = channel.quantity === 'temperature' ? (logger.temperatureOffsetK ?? 0) : 0;
  return offset === 0 ? used : { ...used, value: used.value.map((v) => v + offset) };
}

interface Span {
  /** [s]; the end does not belong to it. */
  readonly from: number;
  readonly to: number;
  /** Its beginning as house.json has it. */
  readonly said: string;
}

/** A time belongs to a span with its minute, a date with its whole day. */
const spansOf = (spans: Logger['leaveOut'] = [], { location }: House): Span[] =>
  spans.map(({ from, to }) => ({
    from: instantOf(from, location.timeZone),
    to:
      to.length === DATE ? instantOf(dayAfter(to), location.timeZone) : instantOf(to, location.timeZone) + 60,
    said: from,
  }));

const DATE = 'YYYY-MM-DD'.length;

/** The place of the first reading of a span, and that after its last. */
const placesIn = ({ from, to }: Span, time: Float64Array): [first: number, end: number] => {
  const first = firstFrom(time, from);
  return [first, Math.max(first, firstFrom(time, to))];
};

/** 1 for each reading that nothing speaks against. */
function unmarked(doubt: Uint8Array): Uint8Array {
  const stays = new Uint8Array(doubt.length);
  for (let i = 0; i < doubt.length; i++) stays[i] = doubt[i] === 0 ? 1 : 0;
  return stays;
}

/** Those readings of a channel that nothing speaks against. */
export const trusted = (channel: LogChannel): LogChannel => onlyThose(channel, unmarked(channel.doubt));

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
