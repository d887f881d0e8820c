/** Stages set beside each other. */

import type { Estimate } from '../assessment.ts';
import { missingFromOne } from '../cooling/index.ts';
import type { Design } from '../fabric/index.ts';
import { changeOf, compareStages, withoutShared } from '../gap/index.ts';
import type { House } from '../house.ts';
import type { HouseRecord } from '../series/record.ts';
import type { ComparisonEvidence, StageEvidence } from './evidence.ts';

/** Each stage with the next; with three or more, the first with the last as well. */
export function pairsOf(stages: readonly StageEvidence[]): (readonly [StageEvidence, StageEvidence])[] {
  const pairs = stages.slice(1).map((after, i) => [stages[i], after] as const);
  return stages.length > 2 ? [...pairs, [stages[0], stages[stages.length - 1]]] : pairs;
}

/** What a comparison rests on beside its stages. */
interface ToCompareWith {
  readonly house: House;
  readonly design: Design | null;
  readonly record: HouseRecord;
  readonly differenceSd: number;
}

/** @param joint the ratio by one network for both stages; the time constants' where there is none */
export function compare(
  before: StageEvidence,
  after: StageEvidence,
  joint: Estimate | null,
  { differenceSd, ...known }: ToCompareWith,
): ComparisonEvidence {
  const sideOf = ({ stage, pooled }: StageEvidence) => ({ nights: stage.nights, pooled });
  const { shared, ...sides } = withoutShared(sideOf(before), sideOf(after), differenceSd);
  const plain =
    sides.before.pooled && sides.after.pooled && compareStages(sides.before.pooled, sides.after.pooled);
  const ratio = joint ?? plain?.heatLossRatio ?? null;
  const compared = ({ stage, headline }: StageEvidence) => ({
    stage,
    heatLoss: headline?.heatLossCoefficient ?? null,
  });
  const change = changeOf({
    ...known,
    before: { ...compared(before), ...sides.before },
    after: { ...compared(after), ...sides.after },
    ratio,
    joint: joint !== null,
  });
  const differing = missingFromOne(before.stage, after.stage);
  return {
    before: before.stage.name,
    after: after.stage.name,
    ratios: ratio && { heatLossRatio: ratio, timeConstantRatio: plain?.timeConstantRatio ?? null },
    change,
    notes: [
      ...(differing.length > 0
        ? [{ code: 'mass-may-differ', names: differing } as const]
        : ratio !== null
          ? [{ code: 'same-mass-assumed' } as const]
          : []),
      ...(known.house.conditions?.openToNeighbour ? [{ code: 'ratio-with-open-door' } as const] : []),
      ...(shared.length > 0 ? [{ code: 'shared-nights-left-out', dates: shared } as const] : []),
      ...change.notes,
    ],
  };
}
