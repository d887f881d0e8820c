/** The readings of the house that a link shows. */
import { useMemo, useState } from 'preact/hooks';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { ReadingsChart } from '../charts/ReadingsChart.tsx';
import { wholeOf } from '../charts/readingsPlot.ts';
import { familiesOf } from '../charts/readingsSeries.ts';
import { useFiner } from '../charts/useFiner.ts';
import type { View } from '../charts/view.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { readingsMarks, summaryOf } from '../readings/readingsWords.ts';
import { useLoaded } from '../useLoaded.ts';
import { getSharedReadings } from './accessApi.ts';

const POINTS = 1000;

interface SharedReadingsProps {
  readonly timeZone: string;
  /** Changes when others have come. */
  readonly of: string | null;
}

export function SharedReadings({ timeZone, of }: SharedReadingsProps) {
  const { loaded } = useLoaded(
    (signal) => getSharedReadings({ points: POINTS }, signal),
    `shared readings ${of}`,
  );
  if (loaded.kind === 'loading') return <Skeleton height={600} />;
  if (loaded.kind === 'failed') return <ProblemList problems={loaded.problems} />;
  return <Charts whole={loaded.value} timeZone={timeZone} />;
}

function Charts({ whole, timeZone }: { readonly whole: ReadingsAnswer; readonly timeZone: string }) {
  const [view, setView] = useState<View>(wholeOf(whole));
  const { near, loaded, look } = useFiner(whole, POINTS, getSharedReadings, 'shared readings');
  const families = useMemo(() => familiesOf(near.channels), [near.channels]);
  return (
    <ChartFrame title="Readings" summary={summaryOf(whole, timeZone)}>
      {loaded.kind === 'failed' ? <ProblemList problems={loaded.problems} urgent /> : null}
      <ReadingsChart
        readings={near}
        families={families}
        marks={readingsMarks}
        timeZone={timeZone}
        view={view}
        setView={setView}
        onRange={look}
        foot={() => null}
      />
    </ChartFrame>
  );
}
