/** A record where one looks: the whole of it, thinned by the server, until one looks closer; then that part, read finer. */
import { useCallback, useState } from 'preact/hooks';
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
  const { loaded } = useLoaded(
    (signal) => (closer === null ? Promise.resolve(whole) : get(around(closer, points), signal)),
    `${key} ${closer?.from} ${closer?.to}`,
  );
  const [near, setNear] = useState(whole);
  if (loaded.kind === 'loaded' && loaded.value !== near) setNear(loaded.value);
  const { first, last } = whole;
  const look = useCallback(
    ({ from, to }: View) => setCloser(from <= first && to >= last ? null : { from, to }),
    [first, last],
  );
  return { near: closer === null ? whole : near, loaded, look };
}

const around = ({ from, to }: View, points: number): AskedSpan => {
  const more = (to - from) / 2;
  return { from: from - more, to: to + more, points: 2 * points };
};
