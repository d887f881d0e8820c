/** Where the builder comes in when the program serves others. */

import { useEffect, useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { Message } from '../../src/assessment.ts';
import { problemsOf } from '../api.ts';
import { FormField } from '../parts/FormField.tsx';
import { PageFrame } from '../parts/PageFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { signIn } from './accessApi.ts';
import { placeAfter } from './placeAfter.ts';
import './access.css';

export function SignIn() {
  const { query } = useLocation();
  const [passphrase, setPassphrase] = useState('');
  const [busy, setBusy] = useState(false);
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    setBusy(true);
    try {
      await signIn(passphrase);
      // Loaded anew: nothing of what was refused before stays.
      location.assign(placeAfter(query.then));
    } catch (thrown) {
      setProblems(problemsOf(thrown));
      setBusy(false);
      setPassphrase('');
      field.current?.focus();
    }
  };
  return (
    <PageFrame title="Sign in" alone>
      <form class="access-form" onSubmit={submit}>
        <FormField label="Passphrase" hint="The one that was set where the program runs.">
          {(ties) => (
            <input
              {...ties}
              ref={field}
              type="password"
              autocomplete="current-password"
              required
              value={passphrase}
              onInput={({ currentTarget }) => setPassphrase(currentTarget.value)}
            />
          )}
        </FormField>
        <ProblemList problems={problems} urgent />
        <button type="submit" class="main" disabled={busy}>
          {busy ? 'Looking…' : 'Sign in'}
        </button>
        <p class="small lesser">
          Were you sent a link to one house? It needs no passphrase: open the link again, or{' '}
          <a href="/shared">go to that house</a>.
        </p>
      </form>
    </PageFrame>
  );
}
