/** What a page waits for: asked when the page comes, again on demand; what is there stays until the new is. */
import { useCallback, useEffect, useState } from 'preact/hooks';
import type { Message } from '../src/assessment.ts';
import { problemsOf } from './api.ts';

export type Loaded<T> =
  | { readonly kind: 'loading' }
  | { readonly kind: 'failed'; readonly problems: readonly Message[] }
  | { readonly kind: 'loaded'; readonly value: T };

/**
 * @param load asks for it
 * @param key  names what is asked for: another key, and it is asked for anew
 */
export function useLoaded<T>(
  load: (signal: AbortSignal) => Promise<T>,
  key: string,
): { readonly loaded: Loaded<T>; readonly again: () => void } {
  const [state, setState] = useState<{ key: string; loaded: Loaded<T> }>({
    key,
    loaded: { kind: 'loading' },
  });
  const [times, setTimes] = useState(0);
  useEffect(() => {
    const stop = new AbortController();
    load(stop.signal).then(
      (value) => setState({ key, loaded: { kind: 'loaded', value } }),
      (thrown) => {
        if (!stop.signal.aborted) setState({ key, loaded: { kind: 'failed', problems: problemsOf(thrown) } });
      },
    );
    return () => stop.abort();
  }, [key, times]);
  const again = useCallback(() => setTimes((it) => it + 1), []);
  return { loaded: state.key === key ? state.loaded : { kind: 'loading' }, again };
}
