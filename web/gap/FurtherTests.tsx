/** What would narrow it: each test nobody has made yet, what it would leave of the interval, and its chance to decide. */
import type { StageResult } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { testsInBrief } from '../../src/words/inBrief.ts';
import { figures, heaterCautions } from '../../src/words/index.ts';
import { Caution } from '../parts/Caution.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';
import { testMarks } from './gapMarks.ts';
import { narrowest, narrowestSentence } from './gapWords.ts';

interface FurtherTestsProps {
  readonly stage: StageResult;
  readonly allowance: number;
}

type Test = NonNullable<StageResult['furtherTests']>[number];

/** Only an open verdict has any. */
export function FurtherTests({ stage, allowance }: FurtherTestsProps) {
  const { furtherTests: tests = [], gap } = stage;
  const best = narrowest(tests);
  if (best === null || gap === null) return null;
  return (
    <section>
      <h2>What would narrow it most</h2>
      <p>{tied(narrowestSentence(best, gap.ratio))}</p>
      <div class="gap-tests">
        <Rule
          title="Measured over drawn, today and after each test"
          unit="ratio"
          marks={testMarks(stage, allowance)}
        />
      </div>
      <p class="small lesser">
        Measured over drawn. The hollow marks are foretold: where the figure stays as it is, how much of the{' '}
        <Term of="interval" /> each test would leave.
      </p>
      <Table<Test>
        caption="What each test would leave, and its chance to decide; the likeliest first"
        rows={tests}
        keyOf={({ test }) => test}
        columns={[
          { head: 'Test', cell: ({ test }) => testsInBrief[test] },
          { head: 'Would leave', cell: ({ ratio }) => figures.ratioBetween(ratio), numeric: true },
          {
            head: <Term of="chance to decide">Chance</Term>,
            cell: ({ chanceToDecide }) => figures.percent(chanceToDecide),
            numeric: true,
          },
        ]}
      />
      {tests.length === 1 ? null : (
        <ul class="gap-errands">
          {tests.map(({ test, text }) => (
            <li key={test}>
              <strong>{testsInBrief[test]}:</strong> {tied(text)}.
            </li>
          ))}
        </ul>
      )}
      {tests.some(({ test }) => test === 'heated-night' || test === 'metered-week') ? (
        <Caution>{heaterCautions}</Caution>
      ) : null}
    </section>
  );
}
