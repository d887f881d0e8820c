/** What is to be marked in the charts of the readings beside their lines: pure facts of the answer. */
import type { ReadingsAnswer, ThinnedChannel } from '../../server/api/shapes.ts';
import { orGap } from './nightSeries.ts';

export interface DoubtedMark {
  /** [s] */
  readonly at: number;
  readonly value: number;
}

/**
 * Where the doubted readings of a channel stand. An interval has a least and a greatest value: the doubted reading is
 * the one that is further off its neighbours, for that is what made it doubted.
 */
export function doubtedMarks(
  { doubted, min, max }: ThinnedChannel,
  { time, step }: Pick<ReadingsAnswer, 'time' | 'step'>,
): DoubtedMark[] {
  if (doubted === undefined || time.length === 0) return [];
  const start = time[0] - step / 2;
  const marks = new Map<number, DoubtedMark>();
  for (const at of doubted.at) {
    const i = Math.min(Math.max(Math.floor((at - start) / step), 0), time.length - 1);
    const [low, high] = [orGap(min[i]), orGap(max[i])];
    if (low === null || high === null || marks.has(i)) continue;
    const around = [min[i - 1], max[i - 1], min[i + 1], max[i + 1]].flatMap((it) => orGap(it) ?? []);
    const usual = around.reduce((sum, it) => sum + it, 0) / Math.max(1, around.length);
    const value = Math.abs(high - usual) >= Math.abs(low - usual) ? high : low;
    marks.set(i, { at: low === high ? at : time[i], value });
  }
  return [...marks.values()];
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Below this share of its greatest power a heater is off: what runs always is no heating. */
const ON = 0.1;
/** [W] */
const LEAST = 50;

/** When the heat was on: by its meters, and as house.json has it where no file does. */
export function heatedSpans({ channels, time, step, heating }: ReadingsAnswer): Span[] {
  const spans: { from: number; to: number }[] = [];
  for (const channel of channels.filter(({ place }) => place === 'heat')) {
    const heat = heatOf(channel, step);
    if (heat === null) continue;
    const least = Math.max(heat.least, ON * Math.max(0, ...heat.of));
    for (const [i, strength] of heat.of.entries()) {
      if (strength < least) continue;
      const [from, to] = [time[i] - step / 2, time[i] + step / 2];
      const before = spans.at(-1);
      if (before !== undefined && before.to >= from - step / 10 && before.from <= from) before.to = to;
      else spans.push({ from, to });
    }
  }
  return [...spans, ...heating];
}

/**
 * How strongly each interval was heated, and from where on that is heating: a power [W], the energy of its readings
 * [kWh], whose span the answer does not tell, or by how much a meter's count rose in it [kWh].
 */
function heatOf({ quantity, max }: ThinnedChannel, step: number): { of: number[]; least: number } | null {
  switch (quantity) {
    case 'power':
      return { of: max.map((it) => it ?? 0), least: LEAST };
    case 'energy':
      return { of: max.map((it) => it ?? 0), least: Number.MIN_VALUE };
    case 'meter':
      return { of: max.map((it, i) => (it ?? 0) - (max[i - 1] ?? it ?? 0)), least: (LEAST * step) / 3.6e6 };
    default:
      return null;
  }
}
