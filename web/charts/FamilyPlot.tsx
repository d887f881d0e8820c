/** One family of readings: its legend, which switches lines on and off and tells their values, and its plot. */

import type { ComponentChildren, RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { figures } from '../../src/words/index.ts';
import { watchGestures } from './gestures.ts';
import { Legend, type Switches } from './Legend.tsx';
import { mountPlot } from './plot.ts';
import { dataOf, heightOfPlot, readingsPlot, wholeOf } from './readingsPlot.ts';
import { columnsAt, type Family } from './readingsSeries.ts';
import type UPlot from './uplot.ts';
import type { View } from './view.ts';

interface Props {
  readonly family: Family;
  readonly first: boolean;
  readonly readings: ReadingsAnswer;
  readonly view: View;
  readonly setView: (view: View) => void;
  /** As they are being moved; those of the readings else. */
  readonly stages?: ReadingsAnswer['stages'];
  readonly switches: Switches;
  /** The plot once it is there, null when it is gone. */
  readonly onPlot?: (family: Family, plot: UPlot | null) => void;
  readonly onInstant: (index: number | null) => void;
  readonly onKey: (event: KeyboardEvent, family: Family) => void;
  /** Lies over the plot. */
  readonly children?: ComponentChildren;
  readonly timeZone: string;
  readonly together: string;
}

export function FamilyPlot(props: Props) {
  const { family, first, readings, view, timeZone, together, switches } = props;
  const stages = props.stages ?? readings.stages;
  const latestStages = useLatest(stages);
  const latestSwitches = useLatest(switches);
  const host = useRef<HTMLDivElement>(null);
  const plot = useRef<UPlot | null>(null);
  const values = useRef<(HTMLElement | null)[]>([]);
  const told = useRef<HTMLParagraphElement>(null);
  const latest = useLatest(props);
  const drawn = family.lines.map(({ label }) => label).join('\n');

  useLayoutEffect(() => {
    if (host.current === null) return;
    const setTo = (next: View) => latest.current.setView(next);
    const source = {
      readings: () => latest.current.readings,
      stages: () => latestStages.current,
      view: () => latest.current.view,
      setView: setTo,
      follow: (of: UPlot) => {
        if (told.current !== null) told.current.textContent = valuesAtCursor(of, latest.current.family);
        tellValues(of, latest.current.family, values.current);
        latest.current.onInstant(of.cursor.idx ?? null);
      },
    };
    const options = readingsPlot(latest.current.family, first, timeZone, together, source);
    const data = dataOf(latest.current.readings, latest.current.family);
    const mounted = mountPlot(host.current, options, data);
    const unwatch = watchGestures(mounted.plot.over, {
      view: source.view,
      bounds: () => wholeOf(latest.current.readings),
      set: setTo,
    });
    plot.current = mounted.plot;
    showLines(mounted.plot, latest.current.family, latestSwitches.current);
    latest.current.onPlot?.(latest.current.family, mounted.plot);
    return () => {
      plot.current = null;
      latest.current.onPlot?.(latest.current.family, null);
      unwatch();
      mounted.destroy();
    };
    // A plot is made anew only when its lines are others.
  }, [drawn, first, timeZone, together, latest]);

  useLayoutEffect(() => plot.current?.setData(dataOf(readings, family)), [readings, drawn]);
  useLayoutEffect(() => plot.current?.setScale('x', { min: view.from, max: view.to }), [view]);

  useLayoutEffect(() => {
    if (plot.current !== null) showLines(plot.current, family, switches);
  }, [switches.hidden, switches.picked, family]);
  useLayoutEffect(() => plot.current?.redraw(false), [stages]);

  return (
    <section class="family">
      <h3>
        {family.title} [{family.unit}]
      </h3>
      {family.midway ? (
        <p ref={told} class="family-values small figure screen-only" aria-hidden="true" />
      ) : (
        <Legend
          lines={family.lines}
          switches={switches}
          tell={(i, element) => {
            values.current[i] = element;
          }}
        />
      )}
      <div class="family-plot">
        <div
          ref={host}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the keys named under the charts move its view and its cursor
          tabIndex={0}
          role="application"
          aria-label={`${family.title} over time`}
          onKeyDown={(event) => props.onKey(event, family)}
          style={{ minHeight: `${heightOfPlot(family, first)}px` }}
        />
        {props.children}
      </div>
    </section>
  );
}

/** What is switched off is gone; what is not picked out is pale while another line is. */
function showLines(plot: UPlot, family: Family, { hidden, picked }: Switches): void {
  let faded = false;
  for (const [i, { key }] of family.lines.entries())
    for (const series of columnsAt(family, i).all) {
      const alpha = picked === null || picked === key ? 1 : PALE;
      faded ||= plot.series[series].alpha !== alpha;
      plot.series[series].alpha = alpha;
      if (plot.series[series].show === hidden.has(key)) plot.setSeries(series, { show: !hidden.has(key) });
    }
  if (faded) plot.redraw(false);
}
const PALE = 0.2;

/** What each line of a family reads at an instant: "Kitchen 18.2 °C; Outside 4.0 to 4.3 °C". */
export function spokenValues(plot: UPlot, family: Family, index: number): string {
  return family.lines
    .flatMap(({ label }, i) => {
      const { most, least } = columnsAt(family, i);
      if (plot.series[most].show === false) return [];
      const text = rangeText(plot.data[least]?.[index], plot.data[most]?.[index], family.unit);
      return [`${label} ${text === '' ? 'no reading' : text}`];
    })
    .join('; ');
}

/** Written straight into the legend: sixty times a second is too often for a new rendering. */
function tellValues(plot: UPlot, family: Family, into: readonly (HTMLElement | null)[]): void {
  const { idxs } = plot.cursor;
  for (const [i, element] of into.entries()) {
    if (element === null) continue;
    const column = columnsAt(family, i);
    const at = idxs?.[column.most];
    const most = typeof at === 'number' ? plot.data[column.most]?.[at] : null;
    const least = typeof at === 'number' ? plot.data[column.least]?.[at] : null;
    element.textContent = rangeText(least, most, family.unit);
  }
}

const valuesAtCursor = (plot: UPlot, family: Family) =>
  typeof plot.cursor.idx === 'number' ? spokenValues(plot, family, plot.cursor.idx) : '';

function rangeText(least: number | null | undefined, most: number | null | undefined, unit: string): string {
  if (typeof least !== 'number' || typeof most !== 'number') return '';
  const digits = Math.abs(most) >= 100 ? 0 : 1;
  const [a, b] = [figures.decimal(least, digits), figures.decimal(most, digits)];
  return a === b ? `${a} ${unit}` : `${a} to ${b} ${unit}`;
}

/** The newest of something, for callbacks that were made earlier. */
function useLatest<T>(value: T): RefObject<T> & { current: T } {
  const ref = useRef(value);
  ref.current = value;
  return ref;
}
