/** How many nights on each side show a fall of the heat loss of that size, and how many are still missing. */
import type { StageResult } from '../../src/assessment.ts';
import { mostNights } from '../../src/gap/change/mostNights.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { Table } from '../parts/Table.tsx';
import { stillNeeded } from './nightsNeeded.ts';

type Plan = NonNullable<StageResult['nightsToShow']>;

interface NightsToShowProps {
  readonly plan: Plan;
  /** Nights that count so far. */
  readonly before: number;
  readonly after: number;
}

export const NightsToShow = ({ plan, before, after }: NightsToShowProps) => (
  <Table<Plan[number]>
    caption="Nights on each side that show it, by a plain comparison of time constants, as these nights scatter"
    rows={plan}
    keyOf={({ changePercent }) => changePercent}
    columns={[
      { head: 'A fall of', cell: ({ changePercent }) => tied(figures.percent(changePercent / 100)) },
      {
        head: 'Each side',
        cell: ({ nights }) => (nights === null ? `over ${mostNights}` : String(nights)),
        numeric: true,
      },
      {
        head: 'Still needed',
        cell: ({ nights }) => (nights === null ? 'too many' : stillNeeded(nights, before, after)),
        numeric: true,
      },
    ]}
  />
);
