/** Stages compared: what each came to, and the ratio of the one to the other, the sharpest figure there is. */
import { useRoute } from 'preact-iso';
import type { Assessment, StageResult } from '../../src/assessment.ts';
import { changeSentence } from '../../src/words/answer.ts';
import { figures } from '../../src/words/index.ts';
import { FigureWithInterval } from '../parts/FigureWithInterval.tsx';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule, type RuleMark } from '../parts/Rule.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';
import { tied } from '../parts/tied.ts';

export function Stages() {
  const { id } = useRoute().params;
  return (
    <HouseFrame id={id} here="Stages">
      {(_, assessment) => <Compared assessment={assessment} />}
    </HouseFrame>
  );
}

function Compared({ assessment: { stages, comparisons } }: { assessment: Assessment }) {
  const [first] = comparisons;
  return (
    <>
      <p class="answer">
        {first === undefined
          ? 'There is one stage only, so there is nothing to compare it with yet.'
          : tied(comparisons.map(changeSentence).join(' '))}
      </p>
      {first === undefined ? (
        <p>
          A <Term of="stage" /> is a span of days in which the house stood as it was. Name a second one in
          house.json, such as before and after sealing, and the two are set side by side.
        </p>
      ) : null}
      {comparisons.map((comparison) => (
        <Comparison key={`${comparison.before} ${comparison.after}`} comparison={comparison} />
      ))}
      <section>
        <h2>Each stage</h2>
        <StageTable stages={stages} />
      </section>
      {stages
        .filter(({ notes }) => notes.length > 0)
        .map(({ name, notes }) => (
          <section key={name}>
            <h2>{name}</h2>
            <ProblemList problems={notes} />
          </section>
        ))}
    </>
  );
}

function Comparison({ comparison }: { comparison: Assessment['comparisons'][number] }) {
  const { before, after, heatLossRatio, timeConstantRatio, notes } = comparison;
  const marks = (
    [
      ['Heat loss', heatLossRatio],
      ['Time constant', timeConstantRatio],
    ] as const
  ).flatMap(([label, it]): RuleMark[] =>
    it === null ? [] : [{ label, value: it.value, low: it.low, high: it.high, kind: 'measured' }],
  );
  return (
    <section>
      <h2>
        “{after}” over “{before}”
      </h2>
      {marks.length === 0 ? null : (
        <>
          <p>At 1 nothing changed. A smaller heat loss and a longer time constant are the better house.</p>
          <Rule
            title={`${after} over ${before}`}
            unit="ratio"
            marks={[...marks, { label: 'Unchanged', value: 1, kind: 'drawn' }]}
          />
        </>
      )}
      <ProblemList problems={notes} />
    </section>
  );
}

const StageTable = ({ stages }: { stages: readonly StageResult[] }) => (
  <Table
    caption="What each stage came to, with 95 % intervals"
    rows={stages}
    keyOf={({ name }) => name}
    columns={[
      { head: 'Stage', cell: ({ name }) => name },
      { head: 'From', cell: ({ from }) => (from === null ? '' : tied(figures.day(from.slice(0, 10)))) },
      { head: 'To', cell: ({ to }) => (to === null ? '' : tied(figures.day(to.slice(0, 10)))) },
      {
        head: 'Nights used',
        cell: ({ nights }) => `${nights.filter(({ used }) => used).length} of ${nights.length}`,
        numeric: true,
      },
      {
        head: <Term of="time constant">Time constant</Term>,
        cell: ({ timeConstantH }) => <FigureWithInterval estimate={timeConstantH} unit="h" />,
        numeric: true,
      },
      {
        head: <Term of="heat loss">Heat loss</Term>,
        cell: ({ heatLossWK }) => <FigureWithInterval estimate={heatLossWK} unit="W/K" />,
        numeric: true,
      },
      {
        head: 'Measured over drawn',
        cell: ({ gap }) => <FigureWithInterval estimate={gap?.ratio ?? null} unit="ratio" />,
        numeric: true,
      },
    ]}
  />
);
