/**
 * A logger that was switched on before it was placed, or picked up before it was stopped: a spell at an end of its
 * log that does not belong to the place, with a step that the rest of the log does not have.
 */
import { timeAt } from '../series/grid.ts';
import type { CarriedFinding, SenseFinding } from './finding.ts';
import { commonCourse, type Laid, medianOf, quantileOf, type Scene, whereOf } from './scene.ts';
import { localText } from './spans.ts';

const HOUR = 3600;
/** [s] A spell is no longer than this, and no longer than a quarter of the log; between its parts it may pause so long. */
const LONGEST = 48 * HOUR;
const PAUSE = 3 * HOUR;
/** [s] Over which a step is measured, and what a logger needs to come to rest. */
const STEP = HOUR / 2;
const SETTLING = 3 * HOUR;
/** [s] Shorter logs have no later course to compare with. */
const SHORTEST = 24 * HOUR;
/** How far out and how sharp, in the unit of the quantity, and beside what the rest of the log has. */
const needed = {
  temperature: { far: 2.5, step: 2.5, settled: 0.7 },
  humidity: { far: 0.12, step: 0.1, settled: 0.03 },
};
const BEYOND_USUAL = 1.4;
/** Of a step against the peers, what must be the logger's own. */
const OWN = 0.6;

export function carried(scene: Scene): SenseFinding[] {
  const spells = scene.loggers.flatMap((one) => {
    const peers = scene.loggers.filter((it) => it !== one && it.logger.place === one.logger.place);
    const course = peersCourse(scene, one, peers);
    const humidity = humidityCourse(scene, peers);
    return (['beginning', 'end'] as const).flatMap((end) => {
      const found =
        spell(scene, end, one.temperature, course, 'temperature', 'peers') ??
        againstItself(scene, end, one, course) ??
        (one.relativeHumidity && spell(scene, end, one.relativeHumidity, humidity, 'humidity', 'peers'));
      return found ? [{ ...found, logger: one.logger }] : [];
    });
  });
  // of two of one place that are out at once, to opposite sides, the nearer is only seen against the other
  const isShadow = (it: (typeof spells)[number]) =>
    it.against === 'peers' &&
    spells.some(
      (other) =>
        other.logger !== it.logger &&
        other.logger.place === it.logger.place &&
        other.quantity === it.quantity &&
        other.from < it.to &&
        it.from < other.to &&
        other.furthest * it.furthest < 0 &&
        Math.abs(other.furthest) > Math.abs(it.furthest),
    );
  return spells
    .filter((it) => !isShadow(it))
    .map(({ logger, ...it }) => ({
      ...it,
      where: whereOf(logger),
      offers: [{ leaveOut: [spanOf(it, scene.place.timeZone)] }],
    }));
}

/**
 * Heating that begins is no carrying about: a room with peers is judged by them alone, and without any only a spell
 * that was warmer than all the rest counts.
 */
function againstItself(
  scene: Scene,
  end: CarriedFinding['end'],
  { logger, temperature }: Laid,
  course: Float64Array | null,
): CarriedFinding | null {
  const isRoom = logger.place === 'inside' || logger.place === 'adjacent';
  if (isRoom && course !== null) return null;
  const found = spell(scene, end, temperature, null, 'temperature', 'itself');
  return isRoom && found !== null && found.furthest < 0 ? null : found;
}

const spanOf = ({ from, to, end }: CarriedFinding, timeZone: string) => ({
  from: localText(from, timeZone),
  to: localText(to, timeZone),
  why: end === 'beginning' ? 'not placed yet' : 'picked up',
});

function peersCourse(scene: Scene, { logger }: Laid, peers: readonly Laid[]) {
  const { weatherTemperature } = scene;
  const weather = logger.place === 'outside' && weatherTemperature ? [weatherTemperature] : [];
  const all = [...peers.map(({ temperature }) => temperature), ...weather];
  return all.length === 0 ? null : commonCourse(all, scene);
}

function humidityCourse(scene: Scene, peers: readonly Laid[]) {
  const all = peers.flatMap(({ relativeHumidity }) => relativeHumidity ?? []);
  return all.length === 0 ? null : commonCourse(all, scene);
}

function spell(
  scene: Scene,
  end: CarriedFinding['end'],
  value: Float64Array,
  course: Float64Array | null,
  quantity: CarriedFinding['quantity'],
  against: CarriedFinding['against'],
): CarriedFinding | null {
  if (against === 'peers' && course === null) return null;
  const { step } = scene.grid;
  const cells = cellsWith(value);
  if (cells.length * step < SHORTEST) return null;
  if (end === 'end') cells.reverse();
  const inWindow = Math.min(LONGEST / step, Math.floor(cells.length / 4));
  // in the order that leads away from this end of the log
  const own = new Float64Array(cells.length);
  const apart = new Float64Array(cells.length);
  for (let k = 0; k < cells.length; k++) {
    own[k] = value[cells[k]];
    apart[k] = own[k] - (course === null ? 0 : course[cells[k]]);
  }
  const rest = apart.subarray(inWindow);
  const level = medianOf(rest);
  const usual = quantileOf(
    rest.map((it) => Math.abs(it - level)),
    0.995,
  );
  const far = Math.max(needed[quantity].far, BEYOND_USUAL * usual);
  const last = lastOfSpell(apart, level, far, inWindow, Math.round(PAUSE / step));
  if (last < 0 || last >= inWindow - 1) return null;
  const stop = settledAt(
    apart,
    level,
    last,
    usual / 2 + needed[quantity].settled,
    Math.round(SETTLING / step),
  );
  const width = Math.round(STEP / step);
  const sharpest = largestStep(apart.subarray(0, stop + width + 1), width);
  const usualStep = largestStep(apart.subarray(stop + 1), width);
  if (sharpest < Math.max(needed[quantity].step, BEYOND_USUAL * usualStep)) return null;
  // a step that is not its own is that of a peer
  if (largestStep(own.subarray(0, stop + width + 1), width) < OWN * sharpest) return null;
  const furthest = apart
    .subarray(0, last + 1)
    .reduce((most, it) => (Math.abs(it - level) > Math.abs(most) ? it - level : most), 0);
  const edge = timeAt(scene.grid, cells[0]) + (end === 'end' ? step : -step);
  const inner = timeAt(scene.grid, cells[stop]);
  return {
    code: 'logger-carried',
    end,
    from: Math.min(edge, inner),
    to: Math.max(edge, inner),
    quantity,
    against,
    furthest,
    usual,
    step: sharpest,
    usualStep,
  };
}

function cellsWith(value: Float64Array): Int32Array {
  const cells = new Int32Array(value.length);
  let count = 0;
  for (let i = 0; i < value.length; i++) if (!Number.isNaN(value[i])) cells[count++] = i;
  return cells.subarray(0, count);
}

/** The last cell that is far out, reached from the end of the log over pauses only; -1 when it begins where it belongs. */
function lastOfSpell(apart: Float64Array, level: number, far: number, within: number, pause: number): number {
  let last = -1;
  const reach = Math.round(pause / 3);
  for (let i = 0; i < within && i - last <= (last < 0 ? reach : pause); i++)
    if (Math.abs(apart[i] - level) > far) last = i;
  return last;
}

/** From there, the first cell that is back where the log belongs. */
function settledAt(apart: Float64Array, level: number, last: number, near: number, settling: number): number {
  for (let i = last; i < last + settling && i < apart.length - 1; i++)
    if (Math.abs(apart[i] - level) <= near) return i;
  return Math.min(last + settling, apart.length - 1);
}

function largestStep(values: Float64Array, width: number): number {
  let largest = 0;
  for (let i = width; i < values.length; i++)
    largest = Math.max(largest, Math.abs(values[i] - values[i - width]));
  return largest;
}
