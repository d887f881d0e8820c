/** Where each stage begins and ends, as handles over the plot: dragged, or moved by the arrow keys. */
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { dayAndClock } from '../../src/sheet/drawing/clock.ts';
import { AXIS_WIDTH, RIGHT } from '../charts/plot.ts';
import type { View } from '../charts/view.ts';
import './StageHandles.css';

type Stages = ReadingsAnswer['stages'];
export type End = 'from' | 'to';

export interface StageHandlesProps {
  readonly stages: Stages;
  readonly view: View;
  readonly bounds: View;
  readonly timeZone: string;
  readonly move: (name: string, end: End, instant: number) => void;
}

const HOUR = 3600;
const DAY = 24 * HOUR;
const QUARTER = 900;

/** By key, in seconds; with Shift a day for an hour. */
const steps: { readonly [key: string]: number | undefined } = {
  ArrowLeft: -HOUR,
  ArrowDown: -HOUR,
  ArrowRight: HOUR,
  ArrowUp: HOUR,
  PageDown: -DAY,
  PageUp: DAY,
};

export function StageHandles({ stages, view, bounds, timeZone, move }: StageHandlesProps) {
  const handle = (name: string, end: End, at: number) => {
    const share = (at - view.from) / (view.to - view.from);
    if (share < 0 || share > 1) return null;
    const onKey = (event: KeyboardEvent) => {
      const step = steps[event.key];
      if (step === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      move(name, end, at + (event.shiftKey ? Math.sign(step) * DAY : step));
    };
    return (
      <button
        key={`${name} ${end}`}
        type="button"
        role="slider"
        class={`stage-handle stage-${end}`}
        aria-label={`“${name}” ${end === 'from' ? 'begins' : 'ends'}`}
        aria-valuemin={bounds.from}
        aria-valuemax={bounds.to}
        aria-valuenow={at}
        aria-valuetext={dayAndClock(at, timeZone)}
        style={{ left: `calc(${AXIS_WIDTH}px + (100% - ${AXIS_WIDTH + RIGHT}px) * ${share})` }}
        onKeyDown={onKey}
        onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
        onPointerMove={(event) => {
          if (event.currentTarget.hasPointerCapture(event.pointerId))
            move(name, end, roundly(instantUnder(event.clientX, event.currentTarget, view), view));
        }}
      >
        <span aria-hidden="true">{end === 'from' ? '├' : '┤'}</span>
      </button>
    );
  };
  return (
    <div class="stage-handles screen-only">
      {stages.flatMap(({ name, from, to }) => [handle(name, 'from', from), handle(name, 'to', to)])}
    </div>
  );
}

function instantUnder(x: number, handle: Element, view: View): number {
  const box = handle.parentElement?.getBoundingClientRect();
  if (box === undefined) return view.from;
  const share = (x - box.left - AXIS_WIDTH) / (box.width - AXIS_WIDTH - RIGHT);
  return view.from + Math.min(Math.max(share, 0), 1) * (view.to - view.from);
}

/** To the hour in a wide view, to the quarter in a near one. */
function roundly(instant: number, { from, to }: View): number {
  const step = to - from > 4 * DAY ? HOUR : QUARTER;
  return Math.round(instant / step) * step;
}
