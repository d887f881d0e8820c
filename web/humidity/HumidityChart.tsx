/** Moist air over the record: one plot for each quantity, with one cursor and one view for all. */
import { useEffect, useId, useMemo, useRef, useState } from 'preact/hooks';
import type { HumidityAnswer } from '../../server/api/loggerShapes.ts';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { dayAndClock } from '../../src/sheet/drawing/clock.ts';
import { FamilyPlot, spokenValues } from '../charts/FamilyPlot.tsx';
import { askedBy, nearestIndex } from '../charts/readingsKeys.ts';
import { wholeOf } from '../charts/readingsPlot.ts';
import type { Family } from '../charts/readingsSeries.ts';
import type UPlot from '../charts/uplot.ts';
import { sameView, type View, within, zoomed } from '../charts/view.ts';
import { moistFamilies } from './families.ts';
import '../charts/ReadingsChart.css';

interface Props {
  readonly answer: HumidityAnswer;
  /** The nights and the stages that the charts are shaded with. */
  readonly record: ReadingsAnswer;
  readonly timeZone: string;
  /** The view stands: finer readings of it may be given. */
  readonly onRange: (view: View) => void;
}

const STILL = 250; // [ms]

export function HumidityChart({ answer, record, timeZone, onRange }: Props) {
  const together = useId();
  const readings = useMemo((): ReadingsAnswer => {
    const { first, last, time, step, channels, excess } = answer;
    return { ...record, first, last, time, step, channels: [...channels, ...excess] };
  }, [answer, record]);
  const families = useMemo(() => moistFamilies(answer), [answer]);
  const whole = wholeOf(readings);
  const [view, setView] = useState<View>(whole);
  const instant = useRef<HTMLSpanElement>(null);
  const asked = useRef(view);
  const plots = useRef(new Map<string, UPlot>());
  const cursor = useRef<number | null>(null);
  const [spoken, setSpoken] = useState('');
  const zoomedIn = !sameView(view, whole);

  useEffect(() => {
    if (sameView(view, asked.current)) return;
    const timer = setTimeout(() => {
      asked.current = view;
      onRange(view);
    }, STILL);
    return () => clearTimeout(timer);
  }, [view, onRange]);

  const tellInstant = (index: number | null) => {
    if (instant.current === null) return;
    const at = index === null ? undefined : readings.time[index];
    instant.current.textContent = at === undefined ? '' : dayAndClock(at, timeZone);
  };
  const moveCursor = (index: number, family: Family) => {
    const at = readings.time[index];
    cursor.current = at;
    const by = Math.min(0, at - view.from) + Math.max(0, at - view.to);
    if (by !== 0) setView(within({ from: view.from + by, to: view.to + by }, whole));
    for (const plot of plots.current.values())
      plot.setCursor({ left: plot.valToPos(at, 'x'), top: plot.over.clientHeight / 2 });
    const own = plots.current.get(family.title);
    if (own !== undefined) setSpoken(`${dayAndClock(at, timeZone)}: ${spokenValues(own, family, index)}`);
  };
  const onKey = (event: KeyboardEvent, family: Family) => {
    const { time, step } = readings;
    const inView = cursor.current !== null && cursor.current >= view.from && cursor.current <= view.to;
    const about = inView && cursor.current !== null ? cursor.current : (view.from + view.to) / 2;
    const next = askedBy(event, { view, whole, step, about });
    if (next === null || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    if (next.kind === 'view') {
      setView(next.view);
      setSpoken(`${dayAndClock(next.view.from, timeZone)} to ${dayAndClock(next.view.to, timeZone)}`);
    } else if (next.kind === 'cursor at') moveCursor(nearestIndex(time, step, next.instant), family);
    else {
      const index = nearestIndex(time, step, about) + next.by;
      moveCursor(Math.min(Math.max(index, 0), time.length - 1), family);
    }
  };
  const closer = (factor: number) => () => setView(zoomed(view, (view.from + view.to) / 2, factor, whole));

  return (
    <div class="readings-chart">
      <div class="readings-bar">
        <p class="figure">
          {dayAndClock(view.from, timeZone)} to {dayAndClock(view.to, timeZone)}
        </p>
        <button type="button" onClick={closer(0.5)}>
          Closer
        </button>
        <button type="button" disabled={!zoomedIn} onClick={closer(2)}>
          Wider
        </button>
        <button type="button" disabled={!zoomedIn} onClick={() => setView(whole)}>
          Whole record
        </button>
        <span ref={instant} class="readings-instant figure" aria-hidden="true" />
      </div>
      <p class="moist-spoken small figure screen-only" aria-live="polite">
        {spoken}
      </p>
      <div class="readings-plots">
        {families.map((family, i) => (
          <FamilyPlot
            key={family.title}
            family={family}
            first={i === 0}
            readings={readings}
            view={view}
            setView={setView}
            onPlot={({ title }, plot) => {
              if (plot === null) plots.current.delete(title);
              else plots.current.set(title, plot);
            }}
            onInstant={tellInstant}
            onKey={onKey}
            timeZone={timeZone}
            together={together}
          />
        ))}
      </div>
      <p class="small lesser">
        Shaded: nights that were used; outlined: nights left out. Hatched at the foot of the temperatures:
        heat on. Figures in circles are the notes of the house.
      </p>
      {record.notes.length === 0 ? null : (
        <ol class="moist-notes small">
          {record.notes.map(({ at, text }) => (
            <li key={`${at} ${text}`}>
              {dayAndClock(at, timeZone)}: {text}
            </li>
          ))}
        </ol>
      )}
      <p class="small lesser screen-only">
        Drag across to zoom in, double-click for the whole record. Keys, once a chart has the focus:{' '}
        <kbd>←</kbd> <kbd>→</kbd> read on, <kbd>Page Up</kbd> <kbd>Page Down</kbd> by a day, <kbd>Shift</kbd>{' '}
        with <kbd>←</kbd> <kbd>→</kbd> move along, <kbd>+</kbd> <kbd>−</kbd> closer and wider, <kbd>0</kbd>{' '}
        the whole record.
      </p>
    </div>
  );
}
