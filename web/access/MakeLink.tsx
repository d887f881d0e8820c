/** The form for a link, and the link once it is made: shown this once, because only its hash is kept. */
import { useState } from 'preact/hooks';
import type { Message } from '../../src/assessment.ts';
import { problemsOf } from '../api.ts';
import { FormField } from '../parts/FormField.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { makeLink, type WantedLink } from './accessApi.ts';
import { CONSENT, lifetimes, SCOPE_HINT, scopeWords, USUAL_DAYS } from './words.ts';

interface MakeLinkProps {
  readonly id: string;
  readonly addresses: readonly string[];
  /** Called when there is another one. */
  readonly made: () => void;
}

export function MakeLink({ id, addresses, made }: MakeLinkProps) {
  const [wanted, setWanted] = useState<WantedLink>({ scope: 'see', whose: '', days: USUAL_DAYS });
  const [path, setPath] = useState<string | null>(null);
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    try {
      setPath((await makeLink(id, wanted)).path);
      setProblems([]);
      made();
    } catch (thrown) {
      setProblems(problemsOf(thrown));
    }
  };
  return (
    <>
      {path === null ? null : (
        <div class="access-made" role="status">
          <p>The link is made. It is shown this once: send it now.</p>
          {addresses.map((address) => (
            <p key={address}>
              <code>{`${address}${path}`}</code>
            </p>
          ))}
        </div>
      )}
      <details>
        <summary>Make a link for those who live here</summary>
        <form class="access-form" onSubmit={submit}>
          <p class="small">{CONSENT}</p>
          <FormField label="For whom" hint="For your list only.">
            {(ties) => (
              <input
                {...ties}
                type="text"
                autocomplete="off"
                maxLength={100}
                value={wanted.whose}
                onInput={({ currentTarget }) => setWanted({ ...wanted, whose: currentTarget.value })}
              />
            )}
          </FormField>
          <FormField label="They may" hint={SCOPE_HINT}>
            {(ties) => (
              <select
                {...ties}
                value={wanted.scope}
                onChange={({ currentTarget: { value } }) =>
                  setWanted({ ...wanted, scope: value as WantedLink['scope'] })
                }
              >
                {Object.entries(scopeWords).map(([scope, words]) => (
                  <option key={scope} value={scope}>
                    {words}
                  </option>
                ))}
              </select>
            )}
          </FormField>
          <FormField label="For so long">
            {(ties) => (
              <select
                {...ties}
                value={wanted.days}
                onChange={({ currentTarget }) => setWanted({ ...wanted, days: Number(currentTarget.value) })}
              >
                {lifetimes.map(({ days, words }) => (
                  <option key={days} value={days}>
                    {words}
                  </option>
                ))}
              </select>
            )}
          </FormField>
          <ProblemList problems={problems} urgent />
          <button type="submit" class="main">
            Make the link
          </button>
        </form>
      </details>
    </>
  );
}
