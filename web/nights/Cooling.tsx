/** The cooling rate against the difference in temperature, with its sentence, its legend and its table. */
import type { NightResult, StageResult } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { NightScatter, StageSample } from '../charts/NightScatter.tsx';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { Table } from '../parts/Table.tsx';
import { slopeSentence } from './nightWords.ts';

export interface CoolingProps {
  readonly stages: readonly StageResult[];
  readonly href: (date: string) => string;
  readonly selected: string | undefined;
}

export function Cooling({ stages, href, selected }: CoolingProps) {
  const told = stages.filter(({ nights }) => nights.some(({ rateKPerH }) => rateKPerH !== null));
  if (told.length === 0) return null;
  return (
    <ChartFrame
      title="How fast it cools"
      summary="The colder it is outside, the faster a house cools. Each mark is a night; the line is the time constant of all used nights together, the shade its 95 % interval. The flatter the line, the better the house holds its warmth."
      table={() => <CoolingTable stages={told} />}
    >
      <ul class="night-scatter-legend small">
        {told.map((stage, i) => (
          <li key={stage.name}>
            <StageSample stage={i} />
            <span>
              “{stage.name}”: {slopeSentence(stage) ?? 'its nights give no time constant'}.
            </span>
          </li>
        ))}
      </ul>
      <NightScatter stages={told} href={href} selected={selected} />
    </ChartFrame>
  );
}

function CoolingTable({ stages }: { readonly stages: readonly StageResult[] }) {
  const rows = stages
    .flatMap(({ name, nights }) => nights.map((night) => ({ name, night })))
    .filter(({ night }) => night.meanDifferenceK !== null && night.rateKPerH !== null)
    .sort((a, b) => (a.night.meanDifferenceK ?? 0) - (b.night.meanDifferenceK ?? 0));
  return (
    <Table<{ readonly name: string; readonly night: NightResult }>
      caption="Each night's rate of cooling, the smallest difference first"
      rows={rows}
      keyOf={({ name, night }) => `${name} ${night.date}`}
      columns={[
        { head: 'Night of', cell: ({ night }) => figures.day(night.date) },
        { head: 'Stage', cell: ({ name }) => name },
        {
          head: 'Warmer inside',
          cell: ({ night }) => (night.meanDifferenceK === null ? '' : figures.kelvins(night.meanDifferenceK)),
          numeric: true,
        },
        {
          head: 'Cooling',
          cell: ({ night }) => (night.rateKPerH === null ? '' : figures.rate(night.rateKPerH)),
          numeric: true,
        },
        { head: 'Used', cell: ({ night }) => (night.used ? 'used' : 'left out') },
      ]}
    />
  );
}
