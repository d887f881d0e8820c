/** All houses that have both figures, measured over drawn, on one ruler: each a line with its interval. */
import type { HouseSummary } from '../../server/api/shapes.ts';
import { figures, verdictSentences } from '../../src/words/index.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Table } from '../parts/Table.tsx';
import { type Compared, comparedOf } from './compared.ts';

/** Nothing below two: one house has its own ruler already. */
export function SideBySide({ houses }: { houses: readonly HouseSummary[] }) {
  const compared = comparedOf(houses);
  if (compared.length < 2) return null;
  return (
    <ChartFrame
      title="Side by side"
      summary="What each house loses over what was drawn for it: on the notch it loses as drawn, to the right more. Where two lines overlap, the houses may be alike."
      table={() => <ComparedTable compared={compared} />}
    >
      <Rule
        title="Measured over drawn"
        unit="ratio"
        small
        marks={[
          ...compared.map(({ label, ratio: { value, low, high } }) => ({
            label,
            value,
            low,
            high,
            kind: 'measured' as const,
          })),
          { label: 'Exactly as drawn', value: 1, kind: 'drawn' as const },
        ]}
      />
    </ChartFrame>
  );
}

const ComparedTable = ({ compared }: { compared: readonly Compared[] }) => (
  <Table<Compared>
    caption="Measured over drawn, house by house"
    rows={compared}
    keyOf={({ id }) => id}
    columns={[
      { head: 'House', cell: ({ label }) => label },
      { head: 'Measured over drawn', cell: ({ ratio }) => figures.ratioBetween(ratio), numeric: true },
      { head: 'Verdict', cell: ({ verdict }) => verdictSentences[verdict] },
    ]}
  />
);
