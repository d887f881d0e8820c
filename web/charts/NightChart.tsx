/** One night opened wide: inside, its fit, outside; under it what the fit leaves over, with the same cursor. */
import { useId, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { NightResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { celsius, signedKelvins, spokenNight } from '../../src/sheet/drawing/chartWords.ts';
import { dayAndClock } from '../../src/sheet/drawing/clock.ts';
import { figures } from '../../src/words/index.ts';
import { HatchSample, LineSample } from './LineSample.tsx';
import { residualPlot, residualsOf, temperaturePlot, temperaturesOf } from './nightPlots.ts';
import { type NightColumns, nightColumns } from './nightSeries.ts';
import { mountPlot } from './plot.ts';
import type UPlot from './uplot.ts';
import './NightChart.css';

interface Props {
  readonly curve: NightCurve;
  readonly night: NightResult | undefined;
  readonly timeZone: string;
}

export function NightChart({ curve, night, timeZone }: Props) {
  const together = useId();
  const above = useRef<HTMLDivElement>(null);
  const below = useRef<HTMLDivElement>(null);
  const plots = useRef<readonly UPlot[]>([]);
  const [at, setAt] = useState<number | null>(null);
  const columns = useMemo(() => nightColumns(curve), [curve]);
  const fitted = columns.residual.some((it) => it !== null);
  const drawn = columns.drawnLow.some((it) => it !== null);

  useLayoutEffect(() => {
    if (above.current === null) return;
    const residuals = residualsOf(columns);
    const temperatures = temperaturePlot(curve, timeZone, together);
    const follow = { setCursor: [(plot: UPlot) => setAt(plot.cursor.idx ?? null)] };
    const upper = mountPlot(
      above.current,
      { ...temperatures, hooks: { ...temperatures.hooks, ...follow } },
      temperaturesOf(columns),
    );
    const lower =
      below.current &&
      mountPlot(below.current, residualPlot(curve, residuals, timeZone, together), residuals);
    plots.current = lower === null ? [upper.plot] : [upper.plot, lower.plot];
    setAt(null);
    return () => {
      plots.current = [];
      upper.destroy();
      lower?.destroy();
    };
  }, [curve, columns, timeZone, together]);

  const walk = (event: KeyboardEvent) => {
    const step = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = nextIndex(columns, at, step * (event.shiftKey ? 6 : 1));
    for (const plot of plots.current) moveCursor(plot, next);
  };

  return (
    <div class="night-chart">
      <Values columns={columns} at={at} timeZone={timeZone} fitted={fitted} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys walk its cursor */}
      <div tabIndex={0} role="application" aria-label={spokenNight(curve.date, night)} onKeyDown={walk}>
        <div ref={above} class="night-temperatures" />
        {fitted && (
          <p class="small lesser">
            {drawn ? 'Measured, and hatched as drawn, less fitted [K]' : 'Measured less fitted [K]'}
          </p>
        )}
        {fitted && <div ref={below} class="night-residuals" />}
      </div>
    </div>
  );
}

interface ValuesProps {
  readonly columns: NightColumns;
  readonly at: number | null;
  readonly timeZone: string;
  readonly fitted: boolean;
}

/** What the lines are, and what they say where the cursor stands. */
function Values({ columns, at, timeZone, fitted }: ValuesProps) {
  const told = (column: readonly (number | null)[], write: (it: number) => string) => {
    const value = at === null ? null : column[at];
    return typeof value === 'number' ? write(value) : '';
  };
  const drawn = columns.drawnLow.some((it) => it !== null);
  const degrees = (column: readonly (number | null)[]) => told(column, (it) => celsius(it, 2));
  return (
    <div class="night-values small figure" aria-live="polite">
      <p class={at === null ? 'lesser screen-only' : undefined}>
        {at === null
          ? 'Point at it, or use the ← and → keys.'
          : `${dayAndClock(columns.time[at], timeZone)} ${told(columns.residual, leftOver)}`}
      </p>
      <ul>
        <li>
          <LineSample ink="ember" dash={[]} /> inside <span>{degrees(columns.inside)}</span>
        </li>
        {fitted && (
          <li>
            <LineSample ink="graphite" dash={[9, 5]} /> fitted <span>{degrees(columns.fitted)}</span>
          </li>
        )}
        {drawn && (
          <li class="night-drawn">
            <HatchSample /> as drawn, 95 %{' '}
            <span>{told(columns.drawnLow, (low) => between(low, columns.drawnHigh[at ?? 0] ?? low))}</span>
          </li>
        )}
        <li>
          <LineSample ink="frost" dash={[6, 4]} /> outside <span>{degrees(columns.outside)}</span>
        </li>
      </ul>
    </div>
  );
}

/** "16.90 to 18.20 °C" */
const between = (low: number, high: number) => `${figures.decimal(low, 2)} to ${celsius(high, 2)}`;

const leftOver = (residual: number) => `(measured ${signedKelvins(residual, 2)} off the fit)`;

const nextIndex = ({ time }: NightColumns, at: number | null, step: number) =>
  Math.min(Math.max((at ?? Math.floor(time.length / 2)) + step, 0), time.length - 1);

function moveCursor(plot: UPlot, index: number): void {
  const left = plot.valToPos(plot.data[0][index], 'x');
  const top = plot.over.clientHeight / 2;
  plot.setCursor({ left, top });
}
