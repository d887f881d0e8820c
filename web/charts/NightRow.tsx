/**
 * The night row: nights as dark bands on a pale strip, newest at the right, all on one scale of temperature
 * and one of time, so that heights and slopes compare. One stop for the Tab key; arrow keys walk the nights.
 */
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { NightResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { signed } from './chartWords.ts';
import { shortDate } from './clock.ts';
import { NightBand } from './NightBand.tsx';
import { bandPitch, heightOf, nightBand, pixelsPerHour, type RowScale, rowScale } from './nightBands.ts';
import { useWidth } from './useWidth.ts';
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
const DAY_WIDTH = 4; // [px], the pale strip between two nights

export function NightRow({ curves, nights, selected, href, onOpen }: Props) {
  const strip = useRef<HTMLOListElement>(null);
  const width = useWidth(strip, 640);
  const pitch = bandPitch(width, curves.length);
  const scale = rowScale(curves, HEIGHT);
  const perHour = pixelsPerHour(curves, pitch - DAY_WIDTH);
  const resultOf = new Map(nights.map((night) => [night.date, night]));
  const reached = selected ?? curves.at(-1)?.date;

  useLayoutEffect(() => strip.current?.scrollTo({ left: strip.current.scrollWidth }), [pitch, curves.length]);
  useLayoutEffect(() => bringIntoView(strip.current), [pitch, selected]);

  if (curves.length === 0) return <p class="lesser">No night yet.</p>;
  return (
    <div class="night-row">
      <Temperatures scale={scale} />
      <ol ref={strip} class="night-strip" aria-label="Nights, newest last" onKeyDown={walk}>
        {curves.map((curve) => {
          const band = nightBand(curve, resultOf.get(curve.date), scale, perHour);
          return (
            <li key={curve.date} style={{ width: `${pitch}px` }}>
              <a
                href={href?.(curve.date) ?? `#${curve.date}`}
                aria-current={curve.date === selected ? 'true' : undefined}
                tabIndex={curve.date === reached ? 0 : -1}
                onClick={
                  onOpen &&
                  ((event) => {
                    event.preventDefault();
                    onOpen(curve.date);
                  })
                }
              >
                <span class="spoken">{band.spoken}</span>
                <NightBand band={band} scale={scale} pitch={pitch} />
                <span class="night-date figure" aria-hidden="true">
                  {shortDate(curve.date)}
                </span>
                <span class="night-mark" aria-hidden="true">
                  {band.heated ? 'heated' : ''}
                </span>
              </a>
            </li>
          );
        })}
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
  <svg class="night-scale" width={46} height={scale.height} aria-hidden="true">
    {scale.ticks.map((tick) => (
      <text key={tick} x={40} y={heightOf(scale, tick) + 4} text-anchor="end">
        {signed(tick, 0)}
        {tick === scale.ticks.at(-1) ? ' °C' : ''}
      </text>
    ))}
  </svg>
);

const moves: { readonly [key: string]: (at: number, last: number) => number } = {
  ArrowLeft: (at) => at - 1,
  ArrowRight: (at) => at + 1,
  Home: () => 0,
  End: (_, last) => last,
};

function walk(event: KeyboardEvent & { readonly currentTarget: HTMLOListElement }) {
  const links = [...event.currentTarget.querySelectorAll('a')];
  const at = links.findIndex((link) => link.matches(':focus'));
  const next = links[moves[event.key]?.(at, links.length - 1) ?? -1];
  if (next === undefined) return;
  event.preventDefault();
  next.focus();
}
