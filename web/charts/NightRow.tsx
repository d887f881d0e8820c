/**
 * The night row: nights as dark bands on a pale strip, newest at the right, all on one scale of temperature
 * and one of time, so that heights and slopes compare. One stop for the Tab key; arrow keys walk the nights.
 */

import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { NightResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { shortDate } from '../../src/sheet/drawing/clock.ts';
import {
  bandPitch,
  heightOf,
  nightBand,
  pixelsPerHour,
  type RowScale,
  rowScale,
} from '../../src/sheet/drawing/nightBands.ts';
import { figures } from '../../src/words/index.ts';
import { NightBand } from './NightBand.tsx';
import { PAPER_WIDTH, usePrinting } from './paper.ts';
import { useWidth } from './useWidth.ts';
import { walk } from './walk.ts';
import './NightRow.css';

interface Props {
  readonly curves: readonly NightCurve[];
  readonly nights: readonly NightResult[];
  /** The date of the night that is open. */
  readonly selected?: string;
  readonly href?: (date: string) => string;
  readonly onOpen?: (date: string) => void;
}

const HEIGHT = 208; // [px]
const SCALE_WIDTH = 46; // [px]
const DAY_WIDTH = 4; // [px], the pale strip between two nights

export function NightRow({ curves, nights, selected, href, onOpen }: Props) {
  const strip = useRef<HTMLOListElement>(null);
  const width = useWidth(strip, 640, PAPER_WIDTH - SCALE_WIDTH);
  const pitch = bandPitch(width, curves.length);
  const scale = useMemo(() => rowScale(curves, HEIGHT), [curves]);
  const perHour = pixelsPerHour(curves, pitch - DAY_WIDTH);
  const bands = useMemo(() => {
    const resultOf = new Map(nights.map((night) => [night.date, night]));
    return curves.map((curve) => nightBand(curve, resultOf.get(curve.date), scale, perHour));
  }, [curves, nights, scale, perHour]);
  // Paper does not scroll: it has the newest that it has room for.
  const shown = usePrinting() ? bands.slice(-Math.floor(width / pitch + 1e-9)) : bands;
  const reached = selected ?? curves.at(-1)?.date;

  useLayoutEffect(() => strip.current?.scrollTo({ left: strip.current.scrollWidth }), [pitch, curves.length]);
  useLayoutEffect(() => bringIntoView(strip.current), [pitch, selected]);

  if (curves.length === 0) return <p class="lesser">No night yet.</p>;
  return (
    <div class="night-row">
      <Temperatures scale={scale} />
      <ol ref={strip} class="night-strip" aria-label="Nights, newest last" onKeyDown={walk}>
        {shown.map((band) => (
          <li key={band.date} style={{ width: `${pitch}px` }}>
            <a
              href={href?.(band.date) ?? `#${band.date}`}
              aria-current={band.date === selected ? 'true' : undefined}
              tabIndex={band.date === reached ? 0 : -1}
              onClick={
                onOpen &&
                ((event) => {
                  event.preventDefault();
                  onOpen(band.date);
                })
              }
            >
              <span class="spoken">{band.spoken}</span>
              <NightBand band={band} scale={scale} pitch={pitch} />
              <span class="night-date figure" aria-hidden="true">
                {shortDate(band.date)}
              </span>
              <span class="night-mark" aria-hidden="true">
                {band.heated ? 'heated' : ''}
              </span>
            </a>
          </li>
        ))}
      </ol>
    </div>
  );
}

/** The open night in the middle, unless it is in view already. */
function bringIntoView(strip: HTMLOListElement | null): void {
  const open = strip?.querySelector<HTMLElement>('[aria-current]')?.parentElement;
  if (!strip || !open) return;
  const [left, right] = [open.offsetLeft, open.offsetLeft + open.offsetWidth];
  const visible = left >= strip.scrollLeft - 1 && right <= strip.scrollLeft + strip.clientWidth + 1;
  if (!visible) strip.scrollLeft = (left + right - strip.clientWidth) / 2;
}

/** The scale stays at the left while the nights scroll. */
const Temperatures = ({ scale }: { readonly scale: RowScale }) => (
  <svg class="night-scale" width={SCALE_WIDTH} height={scale.height} aria-hidden="true">
    {scale.ticks.map((tick) => (
      <text key={tick} x={40} y={heightOf(scale, tick) + 4} text-anchor="end">
        {figures.decimal(tick, 0)}
        {tick === scale.ticks.at(-1) ? ' °C' : ''}
      </text>
    ))}
  </svg>
);
