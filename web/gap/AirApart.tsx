/** What goes through the shell and what with the air, where the wind allows to tell; else why not. */
import type { StageResult } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { apartSentence, figures } from '../../src/words/index.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';
import { apartMarks, drawnApart, type TheDesign } from './gapMarks.ts';

interface AirApartProps {
  readonly stage: StageResult;
  readonly design: TheDesign;
}

export function AirApart({ stage, design }: AirApartProps) {
  const { apart } = stage;
  if (!apart) return <NotApart stage={stage} />;
  const drawn = drawnApart(design);
  return (
    <ChartFrame
      title="Through the shell, and with the air"
      summary={tied(apartSentence(stage) ?? '')}
      table={() => (
        <Table
          caption="Fabric and leakage apart; 95 % intervals"
          rows={[
            { name: 'Through the shell', measured: apart.fabricWK, drawn: drawn.shell },
            { name: 'With the air', measured: apart.leakageWK, drawn: drawn.air },
          ]}
          keyOf={({ name }) => name}
          columns={[
            { head: 'Part', cell: ({ name }) => name },
            { head: 'Measured', cell: ({ measured }) => figures.heatLossBetween(measured), numeric: true },
            { head: 'As drawn', cell: ({ drawn }) => figures.heatLoss(drawn), numeric: true },
          ]}
        />
      )}
    >
      <Rule title="Fabric and leakage, measured and drawn" unit="W/K" marks={apartMarks(apart, design)} />
      <p class="small lesser">
        The shell is the <Term of="fabric" /> with its junctions; the air is <Term of="leakage" /> and what
        vents let through.
      </p>
    </ChartFrame>
  );
}

function NotApart({ stage: { notes } }: { readonly stage: StageResult }) {
  const why = notes.filter(({ code }) => code.startsWith('apart-'));
  return (
    <section>
      <h2>Through the shell, and with the air</h2>
      {why.length > 0 ? (
        <ProblemList problems={why} />
      ) : (
        <p>
          <Term of="fabric">Fabric</Term> and <Term of="leakage" /> are not told apart here: that takes a heat
          loss by the design’s network, and wind that was logged.
        </p>
      )}
    </section>
  );
}
