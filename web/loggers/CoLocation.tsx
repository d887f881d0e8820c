/** The hours in which all loggers lay side by side: given here, changed, and taken out again. */
import { useRef, useState } from 'preact/hooks';
import type { HouseDetail } from '../../server/api/shapes.ts';
import type { Message } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import { localMoment } from '../../src/words/loggerFacts.ts';
import { coLocationWords } from '../../src/words/placingAdvice.ts';
import { keepHouse, problemsOf } from '../api.ts';
import { DateField } from '../parts/DateField.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';

interface Props {
  readonly house: HouseDetail;
  /** Loads the house anew. */
  readonly again: () => void;
}

const { needTime, needLater } = coLocationWords;

export function CoLocation({ house: { id, house }, again }: Props) {
  const { coLocation: stated, ...rest } = house;
  const [{ from, to }, setHours] = useState(stated ?? { from: '', to: '' });
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);
  const [told, setTold] = useState('');
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const telling = useRef<HTMLParagraphElement>(null);
  const wrong = {
    from: tried && from === '' ? needTime : undefined,
    to: tried && to === '' ? needTime : tried && from >= to ? needLater : undefined,
  };
  const keep = async (changed: House, words: string) => {
    setBusy(true);
    try {
      await keepHouse(id, house, changed);
      setTold(words);
      setProblems([]);
      setTried(false);
      telling.current?.focus();
      again();
    } catch (thrown) {
      setProblems(problemsOf(thrown));
    }
    setBusy(false);
  };
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    setTried(true);
    if (from === '' || to === '' || from >= to)
      requestAnimationFrame(() => form.querySelector<HTMLElement>('[aria-invalid]')?.focus());
    else keep({ ...rest, coLocation: { from, to } }, coLocationWords.kept);
  };
  return (
    <>
      {stated === undefined ? null : (
        <p>
          These lay side by side from {localMoment(stated.from)} to {localMoment(stated.to)}.
        </p>
      )}
      <form class="heat-form screen-only" onSubmit={submit} noValidate>
        {(['from', 'to'] as const).map((end) => (
          <DateField
            key={end}
            label={coLocationWords[end]}
            type="datetime-local"
            value={end === 'from' ? from : to}
            problem={wrong[end]}
            onWrite={(value) => setHours({ from, to, [end]: value })}
          />
        ))}
        <p class="heat-add">
          <button type="submit" disabled={busy}>
            {coLocationWords.keep}
          </button>{' '}
          {stated === undefined ? null : (
            <button
              type="button"
              class="quiet"
              disabled={busy}
              onClick={() => {
                setHours({ from: '', to: '' });
                keep(rest, coLocationWords.takenOut);
              }}
            >
              {coLocationWords.takeOut}
            </button>
          )}
        </p>
      </form>
      <ProblemList problems={problems} urgent />
      <p role="status" class="small" ref={telling} tabIndex={-1}>
        {told}
      </p>
    </>
  );
}
