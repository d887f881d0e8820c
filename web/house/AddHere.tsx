/** The way for later exports of this house: a link, and whatever is dropped anywhere on the page. */
import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { Message } from '../../src/assessment.ts';
import { handOn } from '../pages/handedOn.ts';
import type { PathOf } from '../pages/houseFolder.ts';
import { packIn } from '../pages/packIn.ts';
import { useDrop } from '../pages/useDrop.ts';
import { ProblemList } from '../parts/ProblemList.tsx';

export function AddHere({ id }: { readonly id: string }) {
  const { route } = useLocation();
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const address = `/bring?onto=${encodeURIComponent(id)}`;
  const send = async (found: readonly PathOf<File>[]) => {
    const isPack = (await packIn(found)) !== null; // a house by itself
    handOn(found);
    route(isPack ? '/bring' : address);
  };
  const over = useDrop({ send, complain: (problem) => setProblems([problem]) });
  return (
    <div class="screen-only">
      <p class="way">
        <a href={address}>Add readings</a>
        <span class="small lesser">
          {over ? 'Let go: the files are read here.' : 'or drop the loggers’ files anywhere on this page.'}
        </span>
      </p>
      <ProblemList problems={problems} urgent />
    </div>
  );
}
