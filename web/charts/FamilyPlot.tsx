/** One family of readings: its legend, which switches lines on and off and tells their values, and its plot. */

import type { ComponentChildren, RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { figures } from '../../src/words/index.ts';
import { watchGestures } from './gestures.ts';
import { LineSample } from './LineSample.tsx';
import { mountPlot } from './plot.ts';
import { dataOf, heightOfPlot, readingsPlot, wholeOf } from './readingsPlot.ts';
import type { Family } from './readingsSeries.ts';
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
  /** Where what is switched off is to be known outside. */
  readonly switches?: Switches;
  /** The plot once it is there, null when it is gone. */
  readonly onPlot?: (family: Family, plot: UPlot | null) => void;
  readonly onInstant: (index: number | null) => void;
  readonly onKey: (event: KeyboardEvent, family: Family) => void;
  /** Lies over the plot. */
  readonly children?: ComponentChildren;
  readonly timeZone: string;
  readonly together: string;
}

export interface Switches {
  /** Channels that are switched off. */
  readonly hidden: ReadonlySet<number>;
  readonly toggle: (channel: number) => void;
}

export function useSwitches(): Switches {
  const [hidden, setHidden] = useState<ReadonlySet<number>>(new Set());
  const toggle = (channel: number) => {
    const next = new Set(hidden);
    if (!next.delete(channel)) next.add(channel);
    setHidden(next);
  };
  return { hidden, toggle };
}

export function FamilyPlot(props: Props) {
  const { family, first, readings, view, timeZone, together } = props;
  const own = useSwitches();
  const { hidden, toggle } = props.switches ?? own;
  const stages = props.stages ?? readings.stages;
  const latestStages = useLatest(stages);
  const latestHidden = useLatest(hidden);
  const host = useRef<HTMLDivElement>(null);
  const plot = useRef<UPlot | null>(null);
  const values = useRef<(HTMLSpanElement | null)[]>([]);
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
    showLines(mounted.plot, latest.current.family, latestHidden.current);
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
    if (plot.current !== null) showLines(plot.current, family, hidden);
  }, [hidden, family]);
  useLayoutEffect(() => plot.current?.redraw(false), [stages]);

  return (
    <section class="family">
      <h3>
        {family.title} [{family.unit}]
      </h3>
      <ul class="family-legend">
        {family.lines.map(({ label, ink, dash, channel }, i) => (
          <li key={channel}>
            <button type="button" aria-pressed={!hidden.has(channel)} onClick={() => toggle(channel)}>
              <LineSample ink={ink} dash={dash} />
              {label}
            </button>
            <span
              class="figure"
              ref={(element) => {
                values.current[i] = element;
              }}
            />
          </li>
        ))}
      </ul>
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

/** Every line has two series, its greatest and its least values. */
function showLines(plot: UPlot, { lines }: Family, hidden: ReadonlySet<number>): void {
  for (const [i, { channel }] of lines.entries())
    for (const series of [2 * i + 1, 2 * i + 2])
      if (plot.series[series].show === hidden.has(channel))
        plot.setSeries(series, { show: !hidden.has(channel) });
}

/** What each line of a family reads at an instant: "Kitchen 18.2 °C; Outside 4.0 to 4.3 °C". */
export function spokenValues(plot: UPlot, { lines, unit }: Family, index: number): string {
  return lines
    .flatMap(({ label }, i) => {
      if (plot.series[2 * i + 1].show === false) return [];
      const text = rangeText(plot.data[2 * i + 2]?.[index], plot.data[2 * i + 1]?.[index], unit);
      return [`${label} ${text === '' ? 'no reading' : text}`];
    })
    .join('; ');
}

/** Written straight into the legend: sixty times a second is too often for a new rendering. */
function tellValues(plot: UPlot, family: Family, into: readonly (HTMLSpanElement | null)[]): void {
  const { idxs } = plot.cursor;
  for (const [i, element] of into.entries()) {
    if (element === null) continue;
    const at = idxs?.[2 * i + 1];
    const most = typeof at === 'number' ? plot.data[2 * i + 1]?.[at] : null;
    const least = typeof at === 'number' ? plot.data[2 * i + 2]?.[at] : null;
    element.textContent = rangeText(least, most, family.unit);
  }
}

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
