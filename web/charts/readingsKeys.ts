/** What a key asks of the charts of the readings: another view, or the cursor elsewhere. */
import { panned, type View, zoomed } from './view.ts';

export type Asked =
  | { readonly kind: 'view'; readonly view: View }
  /** By so many intervals, or to one end of the view. */
  | { readonly kind: 'cursor'; readonly by: number }
  | { readonly kind: 'cursor at'; readonly instant: number };

const DAY = 86_400; // [s]

export interface KeyPressed {
  readonly key: string;
  readonly shiftKey: boolean;
}

/**
 * @param step   length of an interval [s]
 * @param about  where one zooms, such as the cursor [s]
 * @returns null when it asks for nothing
 */
export function askedBy(
  { key, shiftKey }: KeyPressed,
  { view, whole, step, about }: { view: View; whole: View; step: number; about: number },
): Asked | null {
  const quarter = (view.to - view.from) / 4;
  const aDay = Math.max(1, Math.round(DAY / step));
  switch (key) {
    case 'ArrowLeft':
    case 'ArrowRight': {
      const sign = key === 'ArrowLeft' ? -1 : 1;
      return shiftKey
        ? { kind: 'view', view: panned(view, sign * quarter, whole) }
        : { kind: 'cursor', by: sign };
    }
    case 'PageUp':
      return { kind: 'cursor', by: -aDay };
    case 'PageDown':
      return { kind: 'cursor', by: aDay };
    case 'Home':
      return { kind: 'cursor at', instant: view.from };
    case 'End':
      return { kind: 'cursor at', instant: view.to };
    case '+':
    case '=':
      return { kind: 'view', view: zoomed(view, about, 0.5, whole) };
    case '-':
    case '−':
      return { kind: 'view', view: zoomed(view, about, 2, whole) };
    case '0':
    case 'Escape':
      return { kind: 'view', view: whole };
    default:
      return null;
  }
}

/** Which interval is nearest to an instant; the intervals are of one length. */
export const nearestIndex = (time: readonly number[], step: number, instant: number): number =>
  time.length === 0 ? 0 : Math.min(Math.max(Math.round((instant - time[0]) / step), 0), time.length - 1);
