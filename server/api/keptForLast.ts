/** What is worked out of all readings of a house, once for as long as they stay. */
import type { Reading } from '../store/reading.ts';

/**
 * Of the house that was asked for last alone: who looks closer asks again and again, and what is kept stays bounded.
 * A house that changed, or was changed meanwhile, is worked out anew.
 */
export function keptForLast<T>(reading: Reading, workOut: (id: string) => Promise<T>) {
  let kept: { readonly content: string; readonly result: Promise<T> } | null = null;
  const contentOf = (id: string) => reading.house(id)?.content ?? '';
  return (id: string): Promise<T> => {
    const content = contentOf(id);
    if (kept?.content === content) return kept.result;
    const own = { content, result: workOut(id) };
    kept = own;
    const forget = () => {
      if (kept === own) kept = null;
    };
    own.result.then(() => contentOf(id) === content || forget(), forget);
    return own.result;
  };
}

/** Long work lets other requests through between its pieces. */
export const nextTurn = () => new Promise<void>((resolve) => setImmediate(resolve));
