/** Moist air over the record: the charts of the readings, told apart by one legend and by names at the lines' ends. */
import { useMemo, useState } from 'preact/hooks';
import type { HumidityAnswer } from '../../server/api/loggerShapes.ts';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { dayAndClock } from '../../src/sheet/drawing/clock.ts';
import { humiditySummary, moistMarks } from '../../src/words/aboutHumidity.ts';
import { getHumidity } from '../api.ts';
import { ReadingsChart } from '../charts/ReadingsChart.tsx';
import { wholeOf } from '../charts/readingsPlot.ts';
import { useFiner } from '../charts/useFiner.ts';
import type { View } from '../charts/view.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { moistFamilies } from './families.ts';
import { MeansOfNights } from './MoistTables.tsx';

interface Props {
  readonly id: string;
  readonly timeZone: string;
  readonly whole: HumidityAnswer;
  /** The nights, the stages and the notes that the charts are marked with. */
  readonly record: ReadingsAnswer;
}

export const POINTS = 800;

export function HumidityChart({ id, timeZone, whole, record }: Props) {
  const [view, setView] = useState<View>({ from: whole.first, to: whole.last });
  const { near, loaded, look } = useFiner(whole, POINTS, (span, signal) => getHumidity(id, span, signal), id);
  const readings = useMemo((): ReadingsAnswer => {
    const { first, last, time, step, channels, excess } = near;
    return { ...record, first, last, time, step, channels: [...channels, ...excess] };
  }, [near, record]);
  const families = useMemo(() => moistFamilies(near), [near]);
  const bounds = wholeOf(readings);
  const span = `${dayAndClock(bounds.from, timeZone)} to ${dayAndClock(bounds.to, timeZone)}`;
  return (
    <ChartFrame
      title="Temperature and humidity over the record"
      summary={humiditySummary(whole.loggers.length, record.nights.length, span)}
      table={() => <MeansOfNights loggers={whole.loggers} />}
    >
      {loaded.kind === 'failed' ? <ProblemList problems={loaded.problems} urgent /> : null}
      <ReadingsChart
        readings={readings}
        families={families}
        legend={families[0].lines}
        marks={moistMarks}
        timeZone={timeZone}
        view={view}
        setView={setView}
        onRange={look}
        foot={() => <Notes notes={record.notes} timeZone={timeZone} />}
      />
    </ChartFrame>
  );
}

const Notes = ({ notes, timeZone }: { notes: ReadingsAnswer['notes']; timeZone: string }) =>
  notes.length === 0 ? null : (
    <ol class="moist-notes small">
      {notes.map(({ at, text }) => (
        <li key={`${at} ${text}`}>
          {dayAndClock(at, timeZone)}: {text}
        </li>
      ))}
    </ol>
  );
