/** Whether the time constant depends on when one begins: with mass deep in the fabric, one exponential is not enough. */
import { poolRandomEffects } from '../maths/pooling.ts';
import { studentTQuantile } from '../maths/studentT.ts';
import type { HouseRecord } from '../series/record.ts';
import type { DecayFit } from './decay.ts';
import { driverOf, type Neighbour } from './driver.ts';
import type { JudgedNight } from './judge.ts';
import { refit } from './refit.ts';

type Fitted = Extract<DecayFit, { kind: 'fitted' }>;

export interface LaterStart {
  /** So much later than the windows of the nights [s]. */
  readonly later: number;
  /** Pooled over the same nights [s]. */
  readonly timeConstant: number;
  /** Standard error of its logarithm [–]. */
  readonly logSe: number;
  /** Ratio to that of the windows as they are, night by night, with its 95 % interval [–]. */
  readonly ratio: { readonly value: number; readonly low: number; readonly high: number };
}

export interface LaterStarts {
  /** Those that are long enough to be begun later. */
  readonly nights: number;
  readonly starts: readonly LaterStart[];
  /** The last start's ratio is clear of 1 and differs from it by more than a tenth. */
  readonly moves: boolean;
}

const STARTS = [0, 1, 2, 3].map((hours) => hours * 3600);
/** What must remain [s]. */
const SHORTEST = 3 * 3600;
/** A difference that matters to nobody's house [–]. */
const TENTH = Math.log(1.1);

/**
 * The used nights fitted again with windows that begin up to three hours later, always on the same nights: those of
 * which three hours remain. Where fewer than two are that long, the starts go as far as they do.
 *
 * @param neighbour as it was given to `judgeNights`
 * @returns null where not even one hour can be spared
 */
export function laterStarts(
  record: HouseRecord,
  nights: readonly JudgedNight[],
  neighbour: Neighbour | null = null,
): LaterStarts | null {
  const driver = driverOf(record, neighbour);
  const series = nights.flatMap(({ used, window }) => {
    if (!used || window === null) return [];
    const fits: Fitted[] = [];
    for (const later of STARTS) {
      const first = window.first + Math.round(later / record.grid.step);
      if ((window.last - first) * record.grid.step < SHORTEST) break;
      const fit = refit(record, record.insideTemperature, driver, { first, last: window.last });
      if (fit.kind === 'not fitted') break;
      fits.push(fit);
    }
    return [fits];
  });
  const reach = Math.max(0, ...STARTS.map((_, k) => k).filter((k) => reaching(series, k).length >= 2));
  if (reach === 0) return null;
  const same = reaching(series, reach);
  const starts = STARTS.slice(0, reach + 1).flatMap((later, k) => startOf(later, same, k) ?? []);
  const last = starts[starts.length - 1];
  const clear = last.ratio.low > 1 || last.ratio.high < 1;
  return { nights: same.length, starts, moves: clear && Math.abs(Math.log(last.ratio.value)) > TENTH };
}

const reaching = (series: readonly (readonly Fitted[])[], k: number) =>
  series.filter((fits) => fits.length > k);

function startOf(later: number, nights: readonly (readonly Fitted[])[], k: number): LaterStart | null {
  const fits = nights.map((night) => night[k]);
  const pooled = poolRandomEffects(
    fits.map((fit) => Math.log(fit.timeConstant.value)),
    fits.map((fit) => fit.logSe ** 2),
  );
  if (pooled.kind === 'not pooled') return null;
  return {
    later,
    timeConstant: Math.exp(pooled.mean),
    logSe: pooled.se,
    ratio: pairedRatio(nights, k),
  };
}

/**
 * The nights' own ratios, each with equal weight and by their scatter: both fits of a night share most of their
 * readings, so their errors do not add up. A fit knows its own error no better than this scatter shows.
 */
function pairedRatio(nights: readonly (readonly Fitted[])[], k: number): LaterStart['ratio'] {
  const logs = nights.map((night) => Math.log(night[k].timeConstant.value / night[0].timeConstant.value));
  const mean = logs.reduce((sum, it) => sum + it, 0) / logs.length;
  const variance = logs.reduce((sum, it) => sum + (it - mean) ** 2, 0) / (logs.length - 1);
  const reach = studentTQuantile(0.975, logs.length - 1) * Math.sqrt(variance / logs.length);
  return { value: Math.exp(mean), low: Math.exp(mean - reach), high: Math.exp(mean + reach) };
}
