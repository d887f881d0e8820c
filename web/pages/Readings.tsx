/** Every logger over the whole record: thinned by the server, and read finer wherever one looks closer. */

import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { useRoute } from 'preact-iso';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import type { Imported } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { getReadings } from '../api.ts';
import { localTimeOf } from '../charts/localTime.ts';
import { ReadingsChart } from '../charts/ReadingsChart.tsx';
import { wholeOf } from '../charts/readingsPlot.ts';
import { accountsOf, type ChannelAccount, familiesOf } from '../charts/readingsSeries.ts';
import { useFiner } from '../charts/useFiner.ts';
import { type View, within } from '../charts/view.ts';
import { ByHandStatus } from '../nights/ByHandStatus.tsx';
import { type AssessedHouse, type ByHand, useByHand } from '../nights/useByHand.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { Table } from '../parts/Table.tsx';
import { MoveStages } from '../readings/MoveStages.tsx';
import { Notes } from '../readings/Notes.tsx';
import { readingsMarks, summaryOf } from '../readings/readingsWords.ts';
import { StageHandles } from '../readings/StageHandles.tsx';
import { TakeReadings } from '../readings/TakeReadings.tsx';
import { useStageMoves } from '../readings/useStageMoves.ts';
import { useLoaded } from '../useLoaded.ts';

export function Readings() {
  const { id } = useRoute().params;
  return (
    <HouseFrame id={id} here="Readings">
      {(house, assessment) => <Record first={{ house, assessment }} />}
    </HouseFrame>
  );
}

const POINTS = 1000;

function Record({ first }: { readonly first: AssessedHouse }) {
  const byHand = useByHand(first);
  const { house } = byHand;
  const { loaded, again } = useLoaded(
    (signal) => getReadings(house.id, { points: POINTS }, signal),
    house.id,
  );
  // Assessed again: what is there stays until the new is.
  useEffect(() => {
    if (house !== first.house) again();
  }, [house, first, again]);
  if (loaded.kind === 'loading') return <Skeleton height={1200} />;
  if (loaded.kind === 'failed') return <ProblemList problems={loaded.problems} />;
  return <Charts byHand={byHand} whole={loaded.value} />;
}

interface ChartsProps {
  readonly byHand: ByHand;
  readonly whole: ReadingsAnswer;
}

function Charts({ byHand, whole }: ChartsProps) {
  const { house, assessment } = byHand;
  const { timeZone } = house.house.location;
  const bounds = wholeOf(whole);
  const [view, setView] = useState<View>(bounds);
  const { near, loaded, look } = useFiner(
    whole,
    POINTS,
    (span, signal) => getReadings(house.id, span, signal),
    house.id,
  );
  // What is noted and decided is of the whole record, which is loaded anew after each change.
  const shown = { ...near, ...markedIn(whole) };
  const families = useMemo(() => familiesOf(shown.channels), [shown.channels]);
  const [moving, setMoving] = useState(false);
  const moves = useStageMoves(house.house.stages ?? [], timeZone);
  const status = useRef<HTMLDivElement>(null);
  const leave = () => status.current?.focus();
  const stages = moving ? moves.stages : shown.stages;

  return (
    <>
      <ByHandStatus byHand={byHand} at={status} />
      <ChartFrame
        title="Every logger over the whole record"
        summary={summaryOf(whole, timeZone)}
        table={() => <Accounts readings={whole} imports={assessment.imports} />}
      >
        {loaded.kind === 'failed' ? <ProblemList problems={loaded.problems} urgent /> : null}
        <ReadingsChart
          readings={shown}
          families={families}
          marks={readingsMarks}
          timeZone={timeZone}
          view={view}
          setView={setView}
          onRange={look}
          stages={stages}
          over={
            moving ? (
              <StageHandles
                stages={stages}
                view={view}
                bounds={bounds}
                timeZone={timeZone}
                move={(name, end, instant) =>
                  moves.moveTo(name, end, Math.min(Math.max(instant, bounds.from), bounds.to))
                }
              />
            ) : null
          }
          foot={(it, plotOf) => <TakeReadings shown={it} name={house.name} plotOf={plotOf} />}
        />
        {(house.house.stages ?? []).length === 0 ? null : (
          <details
            class="screen-only"
            open={moving}
            onToggle={({ currentTarget }) => {
              setMoving(currentTarget.open);
              if (!currentTarget.open) moves.reset();
            }}
          >
            <summary>Move the stages</summary>
            {moving ? (
              <MoveStages
                byHand={byHand}
                moves={moves}
                leave={leave}
                done={() => {
                  moves.reset();
                  setMoving(false);
                }}
              />
            ) : null}
          </details>
        )}
      </ChartFrame>
      <Notes
        byHand={byHand}
        notes={whole.notes}
        timeZone={timeZone}
        at={localTimeOf((view.from + view.to) / 2, timeZone)}
        look={(at) => setView(within({ from: at - NEAR / 2, to: at + NEAR / 2 }, bounds))}
        leave={leave}
      />
    </>
  );
}

const NEAR = 86_400; // [s] shown about a note

const markedIn = ({ nights, stages, notes, heating, leftOut }: ReadingsAnswer) => ({
  nights,
  stages,
  notes,
  heating,
  leftOut,
});

interface AccountsProps {
  readonly readings: ReadingsAnswer;
  readonly imports: readonly Imported[];
}

function Accounts({ readings, imports }: AccountsProps) {
  const value = (it: number | null, unit: string) =>
    it === null ? 'no reading' : `${figures.decimal(it, 1)} ${unit}`;
  const instant = (file: string, end: 'from' | 'to') => {
    const at = imports.find((it) => it.file === file)?.[end] ?? null;
    return at === null ? '' : figures.moment(at);
  };
  return (
    <Table<ChannelAccount>
      caption="What each logger read"
      rows={accountsOf(readings)}
      keyOf={({ title, label }) => `${title} ${label}`}
      columns={[
        { head: 'Logger', cell: ({ label }) => label },
        { head: 'Quantity', cell: ({ title }) => title },
        { head: 'Least', cell: ({ least, unit }) => value(least, unit), numeric: true },
        { head: 'Greatest', cell: ({ most, unit }) => value(most, unit), numeric: true },
        { head: 'File from', cell: ({ file }) => instant(file, 'from') },
        { head: 'File to', cell: ({ file }) => instant(file, 'to') },
      ]}
    />
  );
}
