/** A figure that never stands without its interval: the interval first, the best single figure after it. */
import type { Estimate } from '../../src/assessment.ts';
import { type RuleUnit, ruleUnits } from '../../src/sheet/drawing/ruleUnits.ts';

export interface FigureWithIntervalProps {
  readonly estimate: Estimate | null;
  readonly unit: RuleUnit;
}

export const FigureWithInterval = ({ estimate, unit }: FigureWithIntervalProps) =>
  estimate === null ? (
    <span class="lesser">not known</span>
  ) : (
    <span class="figure">{ruleUnits[unit].between(estimate)}</span>
  );
