/** What each stage came to by itself, whether the house was finished in it, and what is to be known of it. */
import type { StageResult } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { FigureWithInterval } from '../parts/FigureWithInterval.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';
import { NightsToShow } from './NightsToShow.tsx';

export function EachStage({ stages }: { readonly stages: readonly StageResult[] }) {
  const [only] = stages;
  return (
    <>
      <section>
        <h2>Each stage</h2>
        <StageTable stages={stages} />
        {stages.length === 1 && only.nightsToShow ? (
          <>
            <h3>What a second stage could show</h3>
            <NightsToShow plan={only.nightsToShow} before={usedIn(only)} after={0} />
          </>
        ) : null}
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

const usedIn = ({ nights }: StageResult) => nights.filter(({ used }) => used).length;

const isFinished = ({ notes }: StageResult) => notes.every(({ code }) => code !== 'stage-not-complete');

/** "9 January to 25 January" */
const datesOf = (from: string, to: string) =>
  tied(`${figures.day(from.slice(0, 10))} to ${figures.day(to.slice(0, 10))}`);

const StageTable = ({ stages }: { readonly stages: readonly StageResult[] }) => (
  <Table
    caption="What each stage came to, and measured over drawn; 95 % intervals"
    rows={stages}
    keyOf={({ name }) => name}
    columns={[
      {
        head: 'Stage',
        cell: (stage) => (isFinished(stage) ? stage.name : `${stage.name} (house not complete)`),
      },
      { head: 'Dates', cell: ({ from, to }) => (from === null || to === null ? '' : datesOf(from, to)) },
      {
        head: 'Nights used',
        cell: (stage) => `${usedIn(stage)} of ${stage.nights.length}`,
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
        head: 'Over drawn',
        cell: ({ gap }) => <FigureWithInterval estimate={gap?.ratio ?? null} unit="ratio" />,
        numeric: true,
      },
    ]}
  />
);
