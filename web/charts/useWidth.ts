/** How wide an element stands [px], followed as it changes; `assumed` until it is there. */
import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

export function useWidth(element: RefObject<HTMLElement | null>, assumed: number): number {
  const [width, setWidth] = useState(assumed);
  useLayoutEffect(() => {
    const { current } = element;
    if (current === null) return;
    const measure = () => current.clientWidth > 0 && setWidth(current.clientWidth);
    const watching = new ResizeObserver(measure);
    measure();
    watching.observe(current);
    return () => watching.disconnect();
  }, [element]);
  return width;
}
