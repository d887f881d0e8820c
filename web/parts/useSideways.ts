/** Whether something is wider than its frame, and whether its end is in view. */
import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

export type Sideways = 'fits' | 'more' | 'at the end';

const NEAR = 4; // [px]

export function useSideways(frame: RefObject<HTMLElement | null>): Sideways {
  const [state, setState] = useState<Sideways>('fits');
  useLayoutEffect(() => {
    const { current } = frame;
    if (current === null) return;
    const look = () => {
      const left = current.scrollWidth - current.clientWidth;
      setState(left <= 1 ? 'fits' : current.scrollLeft < left - NEAR ? 'more' : 'at the end');
    };
    const watching = new ResizeObserver(look);
    look();
    for (const it of [current, current.firstElementChild]) if (it !== null) watching.observe(it);
    current.addEventListener('scroll', look, { passive: true });
    return () => {
      watching.disconnect();
      current.removeEventListener('scroll', look);
    };
  }, [frame]);
  return state;
}
