/** The files of the watched folder that were not taken: those of one house, or those of none. Quiet when there are none. */
import type { WatchedAnswer } from '../../server/api/shapes.ts';
import { ask } from '../api.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { useLoaded } from '../useLoaded.ts';

const getWatched = (signal: AbortSignal) => ask<WatchedAnswer>('GET', '/watched', { signal });

export function Watched({ house }: { readonly house: string | null }) {
  const { loaded } = useLoaded(getWatched, 'watched');
  if (loaded.kind !== 'loaded') return null; // the page stands without it
  const { folder, problems } = loaded.value;
  const own = problems.filter((it) => it.house === house);
  if (folder === null || own.length === 0) return null;
  return (
    <section class="screen-only">
      <h2>Files not taken</h2>
      <p class="small lesser">
        These lie in the watched folder {folder}. Each is tried again when it changes; from here nothing in
        the folder is touched.
      </p>
      <ProblemList
        problems={own.flatMap(({ path, problems }) =>
          problems.map((it) => ({ ...it, where: { ...it.where, file: path } })),
        )}
      />
    </section>
  );
}
