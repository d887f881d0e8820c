/** What it comes to over a usual year, measured and drawn; for orientation only. */
import type { Assessment, Estimate, StageResult } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures, yearSentence } from '../../src/words/index.ts';
import { energyBetween, powerBetween } from '../../src/words/whatChanged.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';

interface YearBesideProps {
  readonly stage: StageResult;
  readonly design: Assessment['design'];
}

export function YearBeside({ stage, design }: YearBesideProps) {
  const { annual } = stage;
  const sentence = yearSentence(stage);
  if (!annual || sentence === null) return null;
  const { baseC, kelvinDays, place } = annual.degreeDays;
  const rows = [
    {
      name: 'Heat in a year',
      measured: told(annual.heatDemandKWhPerYear, energyBetween),
      drawn: told(design?.heatDemandKWhPerYear, energyBetween),
    },
    {
      name: `Heat load at ${figures.decimal(annual.designDay.outsideC, 0)} °C`,
      measured: told(annual.heatLoadW, powerBetween),
      drawn: told(design?.heatLoadW, powerBetween),
    },
  ];
  return (
    <section>
      <h2>Over a year</h2>
      <p>{tied(sentence)}</p>
      <Table
        caption="Measured and drawn over a usual year; 95 % intervals"
        rows={rows}
        keyOf={({ name }) => name}
        columns={[
          { head: 'Figure', cell: ({ name }) => tied(name) },
          { head: 'Measured', cell: ({ measured }) => measured, numeric: true },
          { head: 'As drawn', cell: ({ drawn }) => drawn, numeric: true },
        ]}
      />
      <p class="small lesser">
        By the <Term of="degree days" /> of {place}: {tied(`${kelvinDays} K·day below ${baseC} °C`)}.
      </p>
      <ProblemList problems={annual.notes} />
    </section>
  );
}

const told = (it: Estimate | null | undefined, write: (it: Estimate) => string) =>
  it === null || it === undefined ? 'not known' : write(it);
