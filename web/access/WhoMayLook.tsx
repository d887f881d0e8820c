/** The links of a house for those who live in it, and what is kept of the house. */
import { useState } from 'preact/hooks';
import type { LinksAnswer } from '../../server/api/accessShapes.ts';
import type { Message } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { problemsOf } from '../api.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { useLoaded } from '../useLoaded.ts';
import { getLinks, takeBackLink } from './accessApi.ts';
import { KeptHouse } from './KeptHouse.tsx';
import { MakeLink } from './MakeLink.tsx';
import { reachWords, scopeTold } from './words.ts';
import './access.css';

interface WhoMayLookProps {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
}

export function WhoMayLook({ id, name, invented }: WhoMayLookProps) {
  const { loaded, again } = useLoaded((signal) => getLinks(id, signal), `links ${id}`);
  const [problems, setProblems] = useState<readonly Message[]>([]);
  if (loaded.kind === 'loading') return null;
  if (loaded.kind === 'failed') return <ProblemList problems={loaded.problems} />;
  const { links, served, keepUntil } = loaded.value;
  const act = (done: Promise<unknown>) =>
    done.then(
      () => {
        setProblems([]);
        again();
        return true;
      },
      (thrown) => {
        setProblems(problemsOf(thrown));
        return false;
      },
    );
  return (
    <>
      <section class="screen-only">
        <h2>Who may look</h2>
        <p>{reachWords(served)}</p>
        <ProblemList problems={problems} urgent />
        {links.length === 0 ? null : (
          <ul class="access-list" aria-label="Links of this house">
            {links.map((link) => (
              <li key={link.number}>
                <span>
                  {link.whose || 'A link'}: {scopeTold[link.scope]}, {runsOut(link)}
                </span>
                <button
                  type="button"
                  class="quiet"
                  aria-label={`Take it back: ${link.whose || 'a link'}`}
                  onClick={() => act(takeBackLink(id, link.number))}
                >
                  Take it back
                </button>
              </li>
            ))}
          </ul>
        )}
        {served.by === null ? null : <MakeLink id={id} addresses={served.addresses} made={again} />}
      </section>
      <KeptHouse id={id} name={name} invented={invented} until={keepUntil} act={act} />
    </>
  );
}

function runsOut({ until }: LinksAnswer['links'][number]): string {
  const day = figures.dayOfYear(new Date(until * 1000).toISOString());
  return until * 1000 < Date.now() ? `ran out on ${day}` : `runs out on ${day}`;
}
