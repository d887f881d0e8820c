/** The whole house on one ruler: measured, drawn, how sure the drawing is, and what is allowed above it. */
import type { StageResult } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { MethodName } from '../parts/MethodName.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';
import { allowanceLabel, drawnBeside, type TheDesign, wholeHouseMarks } from './gapMarks.ts';
import { noted } from './noted.ts';

interface WholeHouseProps {
  readonly stage: StageResult;
  readonly design: TheDesign;
  readonly allowance: number;
}

export function WholeHouse({ stage, design, allowance }: WholeHouseProps) {
  const { gap, heatLossWK: measured } = stage;
  if (gap === null || measured === null) return null;
  return (
    <ChartFrame
      title="The whole house"
      summary={tied(
        `Measured over drawn it comes to ${figures.ratioBetween(gap.ratio)}: at 1 it loses exactly what the drawing says.`,
      )}
      table={() => <WholeHouseTable stage={stage} design={design} allowance={allowance} />}
    >
      <div class="gap-drawn-range">
        <Rule
          title="Heat loss of the whole house, measured and drawn"
          unit="W/K"
          marks={wholeHouseMarks(stage, design, allowance)}
        />
      </div>
      <p class="small lesser">
        In <Term of="W/K" />; the line is the 95 % <Term of="interval" />. Broken lines are the drawing’s: the
        notches what it says and what its <Term of="allowance" /> adds, the hollow mark how far it may be off
        itself. Measured <MethodName method={measured.method} />.
      </p>
      <ProblemList
        problems={[...noted(gap.notes, ...wholeHouseCodes), ...noted(stage.notes, 'stage-not-complete')]}
      />
    </ChartFrame>
  );
}

const wholeHouseCodes = ['gap-compared', 'gap-none', 'gap-may-be-none', 'gap-within-design'] as const;

function WholeHouseTable({ stage: { heatLossWK: measured, gap }, design, allowance }: WholeHouseProps) {
  const drawn = drawnBeside(design);
  const rows = [
    ['Measured', measured && figures.heatLossBetween(measured)],
    [drawn.label, figures.heatLoss(drawn.value)],
    ['Range as drawn', figures.heatLossBetween(drawn.range)],
    [allowanceLabel(allowance), figures.heatLoss(drawn.value * (1 + allowance))],
    ['Measured over drawn', gap && figures.ratioBetween(gap.ratio)],
    ['Measured less drawn', gap?.excessWK && figures.heatLossBetween(gap.excessWK)],
  ] as const;
  return (
    <Table
      caption="The whole house; 95 % intervals, the best single figure in brackets"
      rows={rows.flatMap(([name, figure]) => (figure ? [{ name, figure }] : []))}
      keyOf={({ name }) => name}
      columns={[
        { head: 'Figure', cell: ({ name }) => name },
        { head: 'Worth', cell: ({ figure }) => figure, numeric: true },
      ]}
    />
  );
}
