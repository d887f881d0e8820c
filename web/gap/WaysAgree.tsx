/** All ways to the heat loss on one ruler, and whether they can all be right. */
import type { StageResult } from '../../src/assessment.ts';
import { methodsInBrief } from '../../src/words/inBrief.ts';
import { figures, methodNames } from '../../src/words/index.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Table } from '../parts/Table.tsx';
import { type TheDesign, wayMarks } from './gapMarks.ts';

interface WaysAgreeProps {
  readonly stage: StageResult;
  readonly design: TheDesign | null;
}

/** With one way alone there is nothing to agree with. */
export function WaysAgree({ stage, design }: WaysAgreeProps) {
  const { agreement, estimates } = stage;
  if (agreement === undefined) return null;
  return (
    <ChartFrame
      title="Do the ways agree?"
      summary={
        agreement.agree
          ? 'Yes: every interval meets every other. The stroke is the way that leads, the hollow marks are the others.'
          : 'No: some intervals do not meet. The stroke is the way that leads, the hollow marks are the others.'
      }
      table={() => <WaysTable estimates={estimates} />}
    >
      <Rule title="Heat loss by each way" unit="W/K" marks={wayMarks(stage, design)} />
      <ProblemList problems={[...agreement.notes, ...agreement.apart.flatMap(({ causes }) => causes)]} />
    </ChartFrame>
  );
}

const WaysTable = ({ estimates }: { readonly estimates: StageResult['estimates'] }) => (
  <Table
    caption="Heat loss by each way; 95 % intervals, the best single figure in brackets"
    rows={estimates}
    keyOf={({ method }) => method}
    columns={[
      { head: 'Way', cell: ({ method }) => methodsInBrief[method] },
      { head: 'Heat loss', cell: ({ heatLossWK }) => figures.heatLossBetween(heatLossWK), numeric: true },
      {
        head: 'How',
        cell: ({ method, notes }) => (
          <span class="gap-errand">
            {methodNames[method]}. {notes.map(({ text }) => text).join(' ')}
          </span>
        ),
      },
    ]}
  />
);
