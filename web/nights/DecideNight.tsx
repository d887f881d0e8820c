/** One night put in or left out by hand, with the reason, and left to the rules again. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { NightResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { decideNight, undecideNight } from '../api.ts';
import { FormField } from '../parts/FormField.tsx';
import { type Decision, decisionInBrief, decisionSentence } from './nightWords.ts';
import type { ByHand, Change } from './useByHand.ts';

export interface DecideNightProps {
  readonly byHand: ByHand;
  readonly curve: NightCurve;
  readonly night: NightResult;
  /** Called before the change: what was pressed goes away, so the focus has to go elsewhere. */
  readonly leave: () => void;
}

export function DecideNight({ byHand, curve, night, leave }: DecideNightProps) {
  const { house, change, busy } = byHand;
  const { date } = curve;
  const decision = house.house.nights?.find((it) => it.date === date);
  const make = (it: Change) => {
    leave();
    change(it);
  };
  return (
    <div class="by-hand screen-only">
      {decision === undefined ? (
        <Decide
          key={date}
          date={date}
          used={night.used}
          fitted={curve.fitted.some((it) => it !== null)}
          busy={busy}
          decide={(used, why) => make(changeTo(house.id, date, null, { date, used, why }))}
        />
      ) : (
        <>
          <p>{decisionSentence(decision)}</p>
          <button
            type="button"
            disabled={busy}
            onClick={() => make(changeTo(house.id, date, decision, null))}
          >
            Leave it to the rules again
          </button>
        </>
      )}
    </div>
  );
}

/** From one decision to another; null is none. */
export function changeTo(id: string, date: string, before: Decision | null, after: Decision | null): Change {
  const set = (to: Decision | null) =>
    to === null
      ? undecideNight(id, date)
      : decideNight(id, date, { used: to.used, ...(to.why === undefined ? {} : { why: to.why }) });
  return {
    words:
      after === null
        ? `${decisionInBrief(date, before?.used ?? true)} no longer`
        : decisionInBrief(date, after.used),
    make: () => set(after),
    takeBack: () => set(before),
  };
}

interface DecideProps {
  readonly date: string;
  readonly used: boolean;
  readonly fitted: boolean;
  readonly busy: boolean;
  readonly decide: (used: boolean, why: string) => void;
}

function Decide({ used, fitted, busy, decide }: DecideProps) {
  const [why, setWhy] = useState('');
  const [missing, setMissing] = useState(false);
  const field = useRef<HTMLInputElement | null>(null);
  useEffect(() => setMissing(false), [why]);
  if (!used && !fitted)
    return <p class="small lesser">It cannot be put in by hand: there is no fall in it to fit.</p>;
  const submit = (event: Event) => {
    event.preventDefault();
    if (why.trim() === '') {
      setMissing(true);
      field.current?.focus();
    } else decide(!used, why.trim());
  };
  return (
    <details>
      <summary>{used ? 'Leave this night out by hand' : 'Put this night in by hand'}</summary>
      <form onSubmit={submit} noValidate>
        <FormField
          label="Why?"
          hint={
            used
              ? 'Such as “a window stood open”. The result will say that it is hand-picked.'
              : 'Such as “the heater in the log belongs to the shed”. The result will say that it is hand-picked.'
          }
          {...(missing ? { problem: 'Give the reason: it stands in the result.' } : {})}
        >
          {(ties) => (
            <input
              {...ties}
              ref={field}
              type="text"
              maxLength={1000}
              autocomplete="off"
              value={why}
              onInput={({ currentTarget }) => setWhy(currentTarget.value)}
            />
          )}
        </FormField>
        <button type="submit" disabled={busy}>
          {used ? 'Leave it out' : 'Put it in'}
        </button>
      </form>
    </details>
  );
}
