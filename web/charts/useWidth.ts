/** How wide an element stands [px], followed as it changes; `assumed` until it is there. */
import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import { usePrinting } from './paper.ts';

/** @param onPaper while the page is printed: the sheet is laid out too late to be measured */
export function useWidth(element: RefObject<Element | null>, assumed: number, onPaper: number): number {
  const [width, setWidth] = useState(assumed);
  const printing = usePrinting();
  useLayoutEffect(() => {
    const { current } = element;
    if (current === null) return;
    const measure = () => current.clientWidth > 0 && setWidth(current.clientWidth);
    const watching = new ResizeObserver(measure);
    measure();
    watching.observe(current);
    return () => watching.disconnect();
  }, [element]);
  return printing ? onPaper : width;
}
