/** The same nights begun later: mass deep in the walls cools after the air, and here is how much that matters. */
import type { StageResult } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { Rule, type RuleMark } from '../parts/Rule.tsx';
import { Table } from '../parts/Table.tsx';
import { startsAndStage } from './nightWords.ts';

type Later = NonNullable<StageResult['laterStarts']>;

export function LaterStarts({ stage, several }: { readonly stage: StageResult; readonly several: boolean }) {
  const { laterStarts: later, name } = stage;
  if (later === undefined || later.starts.length === 0) return null;
  const differs = startsAndStage(stage, stage.nights.filter(({ used }) => used).length);
  const marks = later.starts.map(
    ({ laterH, timeConstantH }): RuleMark => ({
      label: laterH === 0 ? 'As chosen' : laterBy(laterH),
      ...timeConstantH,
      kind: laterH === 0 ? 'measured' : 'other',
    }),
  );
  return (
    <ChartFrame
      title={`If the nights${several ? ` of “${name}”` : ''} began later`}
      summary={laterSentence(later)}
      table={() => <LaterTable later={later} />}
    >
      <Rule title="Time constant of the same nights, begun later" unit="h" marks={marks} small />
      {differs === null ? null : <p class="small lesser">{differs}</p>}
    </ChartFrame>
  );
}

function laterSentence({ nights, starts, moves }: Later): string {
  const last = starts.at(-1);
  if (last === undefined) return '';
  const same = `${figures.count(nights, 'night')} long enough for every start`;
  const change = `begun ${laterBy(last.laterH)}, the time constant is ${figures.ratioBetween(last.ratio)} times what it is as chosen`;
  return moves
    ? `Over ${same}: ${change}. It depends on when one begins, so it is no single figure of this house.`
    : `Over ${same}: ${change}. That is within what chance does, or too little to matter.`;
}

/** "2 h later" */
const laterBy = (hours: number) => `${figures.decimal(hours, Number.isInteger(hours) ? 0 : 1)} h later`;

const LaterTable = ({ later: { starts, nights } }: { readonly later: Later }) => (
  <Table
    caption={`The same ${figures.count(nights, 'night')}, begun later; 95 % intervals`}
    rows={starts}
    keyOf={({ laterH }) => laterH}
    columns={[
      {
        head: 'Begun',
        cell: ({ laterH }) => (laterH === 0 ? 'as chosen' : laterBy(laterH)),
      },
      {
        head: 'Time constant',
        cell: ({ timeConstantH }) => figures.hoursBetween(timeConstantH),
        numeric: true,
      },
      { head: 'Ratio to as chosen', cell: ({ ratio }) => figures.ratioBetween(ratio), numeric: true },
    ]}
  />
);
