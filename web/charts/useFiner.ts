/** A record where one looks: the whole of it, thinned by the server, until one looks closer; then that part, read finer. */
import { useCallback, useEffect, useState } from 'preact/hooks';
import type { AskedSpan } from '../api.ts';
import { type Loaded, useLoaded } from '../useLoaded.ts';
import type { View } from './view.ts';

interface Finer<T> {
  /** What is to be drawn: the latest that came. */
  readonly near: T;
  readonly loaded: Loaded<T>;
  /** To be told of every view. */
  readonly look: (view: View) => void;
}

/**
 * @param points of the whole; a part is asked for with half a view more to either side, so that there is something to
 *               see while one moves along
 * @param key    names the record
 */
export function useFiner<T extends { readonly first: number; readonly last: number }>(
  whole: T,
  points: number,
  get: (span: AskedSpan, signal: AbortSignal) => Promise<T>,
  key: string,
): Finer<T> {
  const [closer, setCloser] = useState<View | null>(null);
  const { loaded, again } = useLoaded(
    (signal) => (closer === null ? Promise.resolve(whole) : get(around(closer, points), signal)),
    `${key} ${closer?.from} ${closer?.to}`,
  );
  // The whole was read anew: what is there of the part stays until that is.
  useEffect(() => {
    if (closer !== null) again();
  }, [whole]);
  const [before, setBefore] = useState(whole);
  const near = closer === null ? whole : loaded.kind === 'loaded' ? loaded.value : before;
  if (near !== before) setBefore(near);
  const { first, last } = whole;
  const look = useCallback(
    ({ from, to }: View) => setCloser(from <= first && to >= last ? null : { from, to }),
    [first, last],
  );
  return { near, loaded, look };
}

const around = ({ from, to }: View, points: number): AskedSpan => {
  const more = (to - from) / 2;
  return { from: from - more, to: to + more, points: 2 * points };
};
