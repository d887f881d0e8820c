/** Every logger over the whole record: thinned by the server, and read finer wherever one looks closer. */

import { useCallback, useState } from 'preact/hooks';
import { useRoute } from 'preact-iso';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import type { Imported } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { getReadings } from '../api.ts';
import { dayAndClock } from '../charts/clock.ts';
import { ReadingsChart } from '../charts/ReadingsChart.tsx';
import { accountsOf, type ChannelAccount } from '../charts/readingsSeries.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { Table } from '../parts/Table.tsx';
import { useLoaded } from '../useLoaded.ts';

export function Readings() {
  const { id } = useRoute().params;
  return (
    <HouseFrame id={id} here="Readings">
      {(house, { imports }) => <Record id={id} timeZone={house.house.location.timeZone} imports={imports} />}
    </HouseFrame>
  );
}

const POINTS = 1000;

interface RecordProps {
  readonly id: string;
  readonly timeZone: string;
  readonly imports: readonly Imported[];
}

function Record({ id, timeZone, imports }: RecordProps) {
  const { loaded } = useLoaded((signal) => getReadings(id, { points: POINTS }, signal), id);
  if (loaded.kind === 'loading') return <Skeleton height={1200} />;
  if (loaded.kind === 'failed') return <ProblemList problems={loaded.problems} />;
  return <Charts id={id} timeZone={timeZone} imports={imports} whole={loaded.value} />;
}

function Charts({ id, timeZone, imports, whole }: RecordProps & { readonly whole: ReadingsAnswer }) {
  const [view, setView] = useState<{ from: number; to: number } | null>(null);
  const { loaded } = useLoaded(
    (signal) => (view === null ? Promise.resolve(whole) : finer(id, view, signal)),
    `${id} ${view?.from} ${view?.to}`,
  );
  const [shown, setShown] = useState(whole);
  if (loaded.kind === 'loaded' && loaded.value !== shown) setShown(loaded.value);
  const look = useCallback(
    (from: number, to: number) => setView(from <= whole.first && to >= whole.last ? null : { from, to }),
    [whole],
  );

  return (
    <ChartFrame
      title="Every logger over the whole record"
      summary={summaryOf(whole, timeZone)}
      table={() => <Accounts readings={whole} imports={imports} />}
    >
      {loaded.kind === 'failed' ? <ProblemList problems={loaded.problems} urgent /> : null}
      <ReadingsChart readings={shown} timeZone={timeZone} onRange={look} />
    </ChartFrame>
  );
}

/** Half a view more to either side, so that there is something to see while one moves along. */
function finer(id: string, { from, to }: { from: number; to: number }, signal: AbortSignal) {
  const more = (to - from) / 2;
  return getReadings(id, { from: from - more, to: to + more, points: 2 * POINTS }, signal);
}

function summaryOf({ first, last, channels, nights }: ReadingsAnswer, timeZone: string): string {
  const used = nights.filter((night) => night.used).length;
  return `${figures.count(channels.length, 'channel')} from ${dayAndClock(first, timeZone)} to ${dayAndClock(last, timeZone)}; of ${figures.count(nights.length, 'night')}, ${used} were used. Each line shows the least and the greatest reading of every interval, so no peak is lost.`;
}

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
