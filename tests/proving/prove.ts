/** `npm run prove`: how near each method comes to the truth of simulated houses, and how often its interval holds it. */
import { median, quantile } from 'simple-statistics';
import type { Estimate } from '../../src/assessment.ts';
import { judgeNights, poolTimeConstants } from '../../src/cooling/index.ts';
import { capacityOverTau, heatThenCool } from '../../src/heatloss/index.ts';
import { timeAt } from '../../src/series/grid.ts';
import { nightsBetween } from '../../src/sky/nights.ts';
import type { WallKind } from './archetypes.ts';
import { constantGains, winterRecord } from './winterRecord.ts';

export const wallKinds: readonly WallKind[] = [
  'timber frame',
  'cavity',
  'solid, insulated outside',
  'solid, insulated inside',
];
/** The intervals of the plain forms were set on these; everything else judges. */
export const tuningSeeds = Array.from({ length: 12 }, (_, i) => 100 + i);
export const judgingSeeds = Array.from({ length: 12 }, (_, i) => 200 + i);

export interface Judged {
  readonly method: 'capacity-over-tau' | 'heat-then-cool';
  readonly truth: number;
  readonly estimate: Estimate;
}

/** Every estimate that the plain forms give for one simulated house. */
export function judgeHouse(kind: WallKind, seed: number): Judged[] {
  const { design, record, place, trueHeatLoss: truth } = winterRecord(kind, seed);
  const end = timeAt(record.grid, record.grid.length - 1);
  const nights = judgeNights(record, nightsBetween(record.grid.start, end, place));
  const pooled = poolTimeConstants(nights, record.differenceSd);
  const { heatCapacity, heatCapacitySd } = design;
  const plain =
    pooled === null || heatCapacity === null || heatCapacitySd === null
      ? null
      : capacityOverTau({
          heatCapacity,
          heatCapacitySd,
          timeConstant: pooled.timeConstant.value,
          logSe: pooled.logSe,
          degreesOfFreedom: pooled.degreesOfFreedom,
          constantGains,
          meanDifference: pooled.meanDifference,
          differenceSd: record.differenceSd,
        });
  const heated = nights.filter((night) => night.heated).map(({ night }) => night);
  return [plain, heatThenCool(record, heated, constantGains)].flatMap((it) =>
    it === null || (it.method !== 'capacity-over-tau' && it.method !== 'heat-then-cool')
      ? []
      : [{ method: it.method, truth, estimate: it.heatLossCoefficient }],
  );
}

export const covers = ({ truth, estimate }: Judged) => estimate.low <= truth && truth <= estimate.high;

/** One line a method: records, median and 90th percentile of |error|, coverage, median half-width. */
export function table(judged: readonly Judged[]): string {
  const lines = (['capacity-over-tau', 'heat-then-cool'] as const).map((method) => {
    const own = judged.filter((it) => it.method === method);
    const errors = own.map(({ truth, estimate }) => Math.abs(estimate.value / truth - 1));
    const logs = own.map(({ truth, estimate }) => Math.log(truth / estimate.value));
    const mean = logs.reduce((sum, it) => sum + it, 0) / logs.length;
    const sd = Math.sqrt(logs.reduce((sum, it) => sum + (it - mean) ** 2, 0) / (logs.length - 1));
    const half = own.map(({ truth, estimate }) => (estimate.high - estimate.low) / 2 / truth);
    const percent = (share: number) => `${(100 * share).toFixed(0)} %`.padStart(6);
    return [
      method.padEnd(18),
      String(own.length).padStart(4),
      percent(median(errors)),
      percent(quantile(errors, 0.9)),
      percent(own.filter(covers).length / own.length),
      percent(median(half)),
      `  ln(truth/value) ${mean.toFixed(2)} ± ${sd.toFixed(2)}`,
    ].join('  ');
  });
  return ['method                 n  median     p90  covers    half', ...lines].join('\n');
}
