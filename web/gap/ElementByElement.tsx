/** What each element would have to be for the gap, on a ruler each; nothing of it was measured there. */
import type { StageResult } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';
import { type ElementGap, elementMarks } from './gapMarks.ts';
import { noted } from './noted.ts';

export function ElementByElement({ stage: { gap } }: { readonly stage: StageResult }) {
  const elements = gap?.elements ?? [];
  if (elements.length === 0) return null;
  return (
    <ChartFrame
      title="Element by element"
      summary={noted(gap?.notes, 'gap-in-elements')
        .map(({ text }) => text)
        .join(' ')}
      table={() => <ElementsTable elements={elements} />}
    >
      <p class="small lesser">
        The notch is the <Term of="U-value" /> as drawn. “It alone”: what it would be with the whole{' '}
        <Term of="gap" /> in it. “All evenly”: what it would be if all insulated elements shared the gap. Both
        hollow, since they are reckoned.
      </p>
      <div class="gap-elements">
        {elements.map((element) => (
          <OneElement key={element.name} element={element} />
        ))}
      </div>
    </ChartFrame>
  );
}

function OneElement({ element }: { readonly element: ElementGap }) {
  const { name, uValueDrawn, couldExplainPercent, notes } = element;
  const marks = elementMarks(element);
  return (
    <div class="gap-element">
      <h3>{name}</h3>
      {marks.length > 1 ? (
        <Rule title={`U-value of ${name}`} unit="U-value" marks={marks} small />
      ) : (
        <p class="small">As drawn {tied(figures.transmittance(uValueDrawn))}.</p>
      )}
      {couldExplainPercent.map(({ cause, text }) => (
        <p key={cause} class="small">
          {tied(text)}
        </p>
      ))}
      <ProblemList problems={notes} />
    </div>
  );
}

const ElementsTable = ({ elements }: { readonly elements: readonly ElementGap[] }) => (
  <Table<ElementGap>
    caption="U-values in W/(m²K), as drawn and as they would have to be; 95 % intervals"
    rows={elements}
    keyOf={({ name }) => name}
    columns={[
      { head: 'Element', cell: ({ name }) => name },
      { head: 'As drawn', cell: ({ uValueDrawn }) => figures.ratio(uValueDrawn), numeric: true },
      {
        head: 'With the gap in it alone',
        cell: ({ uValueAlone: it }) => (it === null ? 'cannot hold it' : figures.ratioBetween(it)),
        numeric: true,
      },
      {
        head: 'Shared evenly',
        cell: ({ uValueEvenly: it }) => (it === null ? 'not among them' : figures.ratioBetween(it)),
        numeric: true,
      },
      {
        head: 'The most that one fault explains',
        cell: ({ couldExplainPercent: all }) =>
          all.length === 0 ? '' : figures.percent(Math.max(...all.map(({ percent }) => percent)) / 100),
        numeric: true,
      },
    ]}
  />
);
