/** Until when the house is kept, what leaves it without names, and deleting it whole. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { figures } from '../../src/words/index.ts';
import { deleteHouse } from '../api.ts';
import { FormField } from '../parts/FormField.tsx';
import { keepUntil, namelessAddress } from './accessApi.ts';
import { isOver } from './KeptTooLong.tsx';
import { DELETED_WITH_IT, NAMELESS } from './words.ts';

interface KeptHouseProps {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
  /** A date; null while nothing was agreed. */
  readonly until: string | null;
  /** @returns whether it was done */
  readonly act: (done: Promise<unknown>) => Promise<boolean>;
}

export function KeptHouse({ id, name, invented, until, act }: KeptHouseProps) {
  const due = until !== null && isOver(until);
  return (
    <section class="screen-only">
      <h2>What is kept</h2>
      {until === null ? null : due ? (
        <p>
          <strong>This house was to be kept until {figures.dayOfYear(until)}.</strong> That day is over:
          delete it below, or agree on another. Nothing is deleted by itself.
        </p>
      ) : (
        <p>It is kept until {figures.dayOfYear(until)}; then this page asks for it to be deleted.</p>
      )}
      {invented ? null : <KeepUntil key={until} until={until} agree={(date) => act(keepUntil(id, date))} />}
      <p>
        <a href={namelessAddress(id)} download="house without names.zip">
          The house without names as a zip
        </a>
        : {NAMELESS}
      </p>
      {invented ? null : <Delete id={id} name={name} act={act} />}
    </section>
  );
}

interface KeepUntilProps {
  readonly until: string | null;
  readonly agree: (date: string | null) => void;
}

function KeepUntil({ until, agree }: KeepUntilProps) {
  const [date, setDate] = useState(until ?? '');
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    agree(date === '' ? null : date);
  };
  return (
    <details>
      <summary>{until === null ? 'Agree until when it is kept' : 'Agree on another day'}</summary>
      <form class="access-form" onSubmit={submit}>
        <FormField
          label="Keep it until"
          hint="When the day is over, this page says so; deleting stays with you. Empty for no such day."
        >
          {(ties) => (
            <input
              {...ties}
              type="date"
              value={date}
              onInput={({ currentTarget }) => setDate(currentTarget.value)}
            />
          )}
        </FormField>
        <button type="submit">Keep it so long</button>
      </form>
    </details>
  );
}

function Delete({ id, name, act }: Pick<KeptHouseProps, 'id' | 'name' | 'act'>) {
  const { route } = useLocation();
  const [asked, setAsked] = useState(false);
  const leave = useRef<HTMLButtonElement>(null);
  const ask = useRef<HTMLButtonElement>(null);
  const left = useRef(false);
  useEffect(() => {
    if (asked) leave.current?.focus();
    else if (left.current) ask.current?.focus();
  }, [asked]);
  const remove = async () => {
    if (await act(deleteHouse(id))) route('/');
  };
  if (!asked)
    return (
      <button ref={ask} type="button" onClick={() => setAsked(true)}>
        Delete this house
      </button>
    );
  return (
    <div>
      <p>{DELETED_WITH_IT}</p>
      <p>
        <button type="button" class="main" onClick={remove}>
          Delete “{name}” for good
        </button>{' '}
        <button
          ref={leave}
          type="button"
          onClick={() => {
            left.current = true;
            setAsked(false);
          }}
        >
          Leave it
        </button>
      </p>
    </div>
  );
}
