/** What part of the loss something is: its range on a rule, beside what is kept. */
import type { Estimate } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { Rule, type RuleMark } from '../parts/Rule.tsx';

export interface LossWithRangeProps {
  /** "Along them goes" */
  readonly lead: string;
  readonly title: string;
  readonly range: Estimate;
  /** Of the whole house [W/K]; null while it is unknown. */
  readonly whole: number | null;
  /** As it is kept [W/K]; null where that is the same or unknown. */
  readonly kept: number | null;
}

export function LossWithRange({ lead, title, range, whole, kept }: LossWithRangeProps) {
  const marks: RuleMark[] = [
    { label: 'Now', ...range, kind: 'other' },
    ...(kept === null || kept === range.value
      ? []
      : [{ label: 'As kept', value: kept, kind: 'drawn' } as const]),
  ];
  return (
    <>
      <p class="buildup-figure" aria-live="polite">
        {lead}{' '}
        <strong class="figure">
          {tied(
            whole === null || whole <= 0
              ? figures.heatLossBetween(range)
              : `${figures.percent(range.value / whole)} of all that the house loses`,
          )}
        </strong>
        .
      </p>
      <Rule title={title} unit="W/K" marks={marks} small />
    </>
  );
}
