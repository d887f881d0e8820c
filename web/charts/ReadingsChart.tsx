/**
 * Every logger over the record: one plot for each quantity, with one cursor and one view for all. Finer
 * readings are asked for once a view has stood still for a moment.
 */
import { useEffect, useId, useMemo, useRef, useState } from 'preact/hooks';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { dayAndClock } from './clock.ts';
import { FamilyPlot } from './FamilyPlot.tsx';
import { wholeOf } from './readingsPlot.ts';
import { familiesOf } from './readingsSeries.ts';
import { panned, sameView, type View, zoomed } from './view.ts';
import './ReadingsChart.css';

interface Props {
  readonly readings: ReadingsAnswer;
  readonly timeZone: string;
  /** The view stands: finer readings of it may be given. */
  readonly onRange?: (from: number, to: number) => void;
}

const STILL = 250; // [ms]

export function ReadingsChart({ readings, timeZone, onRange }: Props) {
  const together = useId();
  const whole = wholeOf(readings);
  const [view, setView] = useState<View>(whole);
  const instant = useRef<HTMLSpanElement>(null);
  const families = useMemo(() => familiesOf(readings.channels), [readings]);
  const asked = useRef(view);
  const zoomedIn = !sameView(view, whole);

  useEffect(() => {
    if (sameView(view, asked.current)) return;
    const timer = setTimeout(() => {
      asked.current = view;
      onRange?.(view.from, view.to);
    }, STILL);
    return () => clearTimeout(timer);
  }, [view, onRange]);

  const tellInstant = (index: number | null) => {
    if (instant.current === null) return;
    const at = index === null ? undefined : readings.time[index];
    instant.current.textContent = at === undefined ? '' : dayAndClock(at, timeZone);
  };
  const onKey = (event: KeyboardEvent) => {
    const next = keyed(event.key, view, whole);
    if (next === null || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    setView(next);
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
        <span ref={instant} class="readings-instant figure" />
      </div>
      <div class="readings-plots">
        {families.map((family, i) => (
          <FamilyPlot
            key={family.quantity}
            family={family}
            first={i === 0}
            readings={readings}
            view={view}
            setView={setView}
            onInstant={tellInstant}
            onKey={onKey}
            timeZone={timeZone}
            together={together}
          />
        ))}
      </div>
      <p class="small lesser">Shaded: nights that were used; outlined: nights left out.</p>
      <p class="small lesser screen-only">
        Drag across to zoom in, double-click for the whole record, shift and drag to move along. Keys, once a
        chart has the focus: <kbd>←</kbd> <kbd>→</kbd> move along, <kbd>+</kbd> <kbd>−</kbd> closer and wider,{' '}
        <kbd>0</kbd> the whole record. Ctrl and wheel, or two fingers, zoom as well.
      </p>
    </div>
  );
}

const middleOf = ({ from, to }: View) => (from + to) / 2;

/** The view that a key asks for; null when it asks for none. */
function keyed(key: string, view: View, whole: View): View | null {
  const quarter = (view.to - view.from) / 4;
  if (key === 'ArrowLeft') return panned(view, -quarter, whole);
  if (key === 'ArrowRight') return panned(view, quarter, whole);
  if (key === '+' || key === '=') return zoomed(view, middleOf(view), 0.5, whole);
  if (key === '-' || key === '−') return zoomed(view, middleOf(view), 2, whole);
  if (key === '0' || key === 'Escape') return whole;
  return null;
}
