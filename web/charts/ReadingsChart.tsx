/**
 * Readings over time: one plot for each family, with one cursor and one view for all. Finer readings are asked for once
 * a view has stood still for a moment.
 */
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { dayAndClock } from '../../src/sheet/drawing/clock.ts';
import { FamilyPlot, spokenValues } from './FamilyPlot.tsx';
import { Legend, useSwitches } from './Legend.tsx';
import { askedBy, nearestIndex } from './readingsKeys.ts';
import { wholeOf } from './readingsPlot.ts';
import type { Family, Line } from './readingsSeries.ts';
import type { Shown } from './takeReadings.ts';
import type UPlot from './uplot.ts';
import { sameView, type View, within, zoomed } from './view.ts';
import './ReadingsChart.css';

interface Props {
  readonly readings: ReadingsAnswer;
  /** Each with a title of its own. */
  readonly families: readonly Family[];
  /** One legend for all plots; else each has its own. */
  readonly legend?: readonly Line[];
  readonly timeZone: string;
  readonly view: View;
  readonly setView: (view: View) => void;
  /** The view stands: finer readings of it may be given. */
  readonly onRange: (view: View) => void;
  /** As they are being moved; those of the readings else. */
  readonly stages?: ReadingsAnswer['stages'];
  /** Over the first plot, such as handles of the stages. */
  readonly over?: ComponentChildren;
  /** What the marks in the plots are, beside nights and heat. */
  readonly marks: string;
  /** Under the plots, such as what can be done with what is shown. */
  readonly foot: (shown: Shown, plotOf: (family: Family) => UPlot | undefined) => ComponentChildren;
}

const STILL = 250; // [ms]

export function ReadingsChart(props: Props) {
  const { readings, families, legend, timeZone, view, setView, onRange, over, marks, foot } = props;
  const stages = props.stages ?? readings.stages;
  const together = useId();
  const whole = wholeOf(readings);
  const instant = useRef<HTMLSpanElement>(null);
  const plots = useRef(new Map<string, UPlot>());
  const switches = useSwitches();
  const [spoken, setSpoken] = useState('');
  const cursor = useRef<number | null>(null);
  const asked = useRef(view);
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
    if (at === undefined) return;
    cursor.current = at;
    const [least, most] = [Math.min(view.from, at), Math.max(view.to, at)];
    const by = least < view.from ? least - view.from : most - view.to;
    if (by !== 0) setView(within({ from: view.from + by, to: view.to + by }, whole));
    for (const plot of plots.current.values()) placeCursor(plot, at);
    const own = plots.current.get(family.title);
    if (own !== undefined) setSpoken(`${dayAndClock(at, timeZone)}: ${spokenValues(own, family, index)}`);
  };

  const onKey = (event: KeyboardEvent, family: Family) => {
    const { time, step } = readings;
    const inView = cursor.current !== null && cursor.current >= view.from && cursor.current <= view.to;
    const from = inView && cursor.current !== null ? cursor.current : middleOf(view);
    const next = askedBy(event, { view, whole, step, about: from });
    if (next === null || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    const last = time.length - 1;
    if (next.kind === 'view') {
      setView(next.view);
      setSpoken(`${dayAndClock(next.view.from, timeZone)} to ${dayAndClock(next.view.to, timeZone)}`);
    } else if (next.kind === 'cursor at') moveCursor(nearestIndex(time, step, next.instant), family);
    else moveCursor(Math.min(Math.max(nearestIndex(time, step, from) + next.by, 0), last), family);
  };

  const shown: Shown = {
    readings,
    view,
    timeZone,
    families: families.flatMap((family) => {
      const lines = family.lines.filter(({ key }) => !switches.hidden.has(key));
      return lines.length === 0 ? [] : [{ ...family, lines }];
    }),
  };

  return (
    <div class="readings-chart">
      <div class="readings-bar">
        <p class="figure">
          {dayAndClock(view.from, timeZone)} to {dayAndClock(view.to, timeZone)}
        </p>
        <button type="button" onClick={() => setView(zoomed(view, middleOf(view), 0.5, whole))}>
          Closer
        </button>
        <button
          type="button"
          disabled={!zoomedIn}
          onClick={() => setView(zoomed(view, middleOf(view), 2, whole))}
        >
          Wider
        </button>
        <button type="button" disabled={!zoomedIn} onClick={() => setView(whole)}>
          Whole record
        </button>
        <span ref={instant} class="readings-instant figure" aria-hidden="true" />
      </div>
      <p class="readings-spoken small figure screen-only" aria-live="polite">
        {spoken}
      </p>
      {legend === undefined ? null : <Legend lines={legend} switches={switches} />}
      <div class="readings-plots">
        {families.map((family, i) => (
          <FamilyPlot
            key={family.title}
            family={family}
            first={i === 0}
            readings={readings}
            stages={stages}
            view={view}
            setView={setView}
            switches={switches}
            onPlot={(it, plot) => {
              if (plot === null) plots.current.delete(it.title);
              else plots.current.set(it.title, plot);
            }}
            onInstant={tellInstant}
            onKey={onKey}
            timeZone={timeZone}
            together={together}
          >
            {i === 0 ? over : null}
          </FamilyPlot>
        ))}
      </div>
      <p class="small lesser">
        Shaded: nights that were used; outlined: nights left out. Hatched at the foot of the temperatures:
        heat on. {marks}
        <span class="screen-only"> Touch a line’s name to leave it out.</span>
      </p>
      <p class="small lesser screen-only">
        Drag across to zoom in, double-click for the whole record, shift and drag to move along. Ctrl and
        wheel, or two fingers, zoom as well. Keys, once a chart has the focus: <kbd>←</kbd> <kbd>→</kbd> read
        on, <kbd>Page Up</kbd> <kbd>Page Down</kbd> by a day, <kbd>Shift</kbd> with <kbd>←</kbd> <kbd>→</kbd>{' '}
        move along, <kbd>+</kbd> <kbd>−</kbd> closer and wider, <kbd>0</kbd> the whole record.
      </p>
      {foot(shown, ({ title }) => plots.current.get(title))}
    </div>
  );
}

const middleOf = ({ from, to }: View) => (from + to) / 2;

function placeCursor(plot: UPlot, instant: number): void {
  plot.setCursor({ left: plot.valToPos(instant, 'x'), top: plot.over.clientHeight / 2 });
}
