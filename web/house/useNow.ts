/** The reader's clock, for what is told as so long ago; none on paper, which does not know when it is read. */
import { useEffect, useState } from 'preact/hooks';
import { usePrinting } from '../charts/paper.ts';

const MINUTE = 60_000; // [ms]

/** Milliseconds since 1970 UTC, anew every minute; null while the page is printed. */
export function useNow(): number | null {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const tick = setInterval(() => setNow(Date.now()), MINUTE);
    return () => clearInterval(tick);
  }, []);
  return usePrinting() ? null : now;
}
