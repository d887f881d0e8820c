/**
 * Hands on a chart: shift and drag moves the view, ctrl and wheel (which is also what a pinch on a touch pad
 * sends) zooms it, one finger moves it sideways, two fingers zoom it.
 */
import { panned, type View, zoomed } from './view.ts';

export interface Held {
  readonly view: () => View;
  readonly bounds: () => View;
  readonly set: (view: View) => void;
}

const WHEEL_GAIN = 0.004; // per px of the wheel

/** @returns what stops it */
export function watchGestures(over: HTMLElement, { view, bounds, set }: Held): () => void {
  const fingers = new Map<number, number>();
  const instantAt = (x: number, { from, to } = view()) => {
    const { left, width } = over.getBoundingClientRect();
    return from + ((x - left) / width) * (to - from);
  };
  const moves = (event: PointerEvent) => event.pointerType === 'touch' || event.shiftKey;

  const down = (event: PointerEvent) => {
    if (!moves(event) || fingers.size >= 2) return;
    fingers.set(event.pointerId, event.clientX);
    if (event.pointerType !== 'touch') over.setPointerCapture(event.pointerId);
  };
  const move = (event: PointerEvent) => {
    const before = fingers.get(event.pointerId);
    if (before === undefined) return;
    const [other] = [...fingers].filter(([id]) => id !== event.pointerId).map(([, x]) => x);
    fingers.set(event.pointerId, event.clientX);
    if (other === undefined) {
      set(panned(view(), instantAt(before) - instantAt(event.clientX), bounds()));
    } else {
      const factor = Math.abs(before - other) / Math.max(8, Math.abs(event.clientX - other));
      set(zoomed(view(), instantAt(other), factor, bounds()));
    }
  };
  const up = (event: PointerEvent) => fingers.delete(event.pointerId);
  const wheel = (event: WheelEvent) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    set(zoomed(view(), instantAt(event.clientX), Math.exp(event.deltaY * WHEEL_GAIN), bounds()));
  };

  const stop = new AbortController();
  const { signal } = stop;
  over.addEventListener('pointerdown', down, { signal });
  over.addEventListener('pointermove', move, { signal });
  over.addEventListener('pointerup', up, { signal });
  over.addEventListener('pointercancel', up, { signal });
  over.addEventListener('wheel', wheel, { signal, passive: false });
  return () => stop.abort();
}
