/** One record assessed the way a house folder is, and what of it is to be judged. */
import { assessRecord } from '../../../src/assess.ts';
import type { Estimate, Verdict } from '../../../src/assessment.ts';
import type { ProvingRecord, ProvingTier, Strays } from '../records/provingRecord.ts';
import { timeConstantError } from './timeConstantError.ts';

/** A figure with its interval beside the truth. */
export interface JudgedFigure {
  /** A method, 'headline', or 'ratio after/before'. */
  readonly what: string;
  readonly truth: number;
  readonly estimate: Estimate;
}

export interface JudgedRecord {
  readonly tier: ProvingTier;
  readonly type: string;
  readonly seed: number;
  readonly figures: readonly JudgedFigure[];
  readonly verdict: Verdict | null;
  readonly ratioToDesign: number;
  readonly allowance: number;
  /** Of the pooled time constant, from the same fit over the same windows without noise; null without one. */
  readonly timeConstantErrors: readonly number[];
  readonly strays: Strays;
}

export function judgeRecord(proving: ProvingRecord): JudgedRecord {
  const { tier, type, seed, house, record, noiseFree, truth, strays } = proving;
  const { stages, comparisons, neighbour } = assessRecord(house, record);
  const figures: JudgedFigure[] = stages.flatMap(({ estimates, headline }, k) => {
    const { heatLossCoefficient } = truth.stages[k];
    const all = estimates.map((it) => ({ what: it.method as string, estimate: it.heatLossCoefficient }));
    if (headline !== null) all.push({ what: 'headline', estimate: headline.heatLossCoefficient });
    return all.map((it) => ({ ...it, truth: heatLossCoefficient }));
  });
  const ratios = comparisons[0]?.ratios ?? null;
  if (ratios !== null && truth.ratio !== null)
    figures.push({ what: 'ratio after/before', truth: truth.ratio, estimate: ratios.heatLossRatio });
  return {
    tier,
    type,
    seed,
    figures,
    verdict: stages[stages.length - 1].gap?.verdict ?? null,
    ratioToDesign: truth.ratioToDesign,
    allowance: house.allowance ?? 0.15,
    timeConstantErrors: stages
      .map((stage) => timeConstantError(stage, noiseFree, neighbour))
      .filter((error) => error !== null),
    strays,
  };
}
