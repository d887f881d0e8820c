/** What was noted at an instant: listed with the numbers of the chart, added, removed. */
import { useRef, useState } from 'preact/hooks';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { dayAndClock } from '../../src/sheet/drawing/clock.ts';
import { addNote, removeNote } from '../api.ts';
import type { ByHand } from '../nights/useByHand.ts';
import { DateField } from '../parts/DateField.tsx';
import { FormField } from '../parts/FormField.tsx';
import './readings.css';

export interface NotesProps {
  readonly byHand: ByHand;
  readonly notes: ReadingsAnswer['notes'];
  readonly timeZone: string;
  /** Offered to begin with, as a local time. */
  readonly at: string;
  readonly look: (instant: number) => void;
  readonly leave: () => void;
}

export function Notes({ byHand, notes, timeZone, at, look, leave }: NotesProps) {
  const { house, busy, change } = byHand;
  return (
    <section>
      <h2>Notes</h2>
      {notes.length === 0 ? (
        <p class="lesser">Nothing is noted yet, such as “loft hatch open”.</p>
      ) : (
        <ol class="readings-notes">
          {notes.map((note, i) => {
            const own = { at: note.local, text: note.text.trim() };
            return (
              <li key={`${note.local} ${note.text}`}>
                <span class="readings-number figure">{i + 1}</span>
                <button type="button" class="quiet figure readings-when" onClick={() => look(note.at)}>
                  {dayAndClock(note.at, timeZone)}
                </button>
                <span class="readings-note">
                  {note.text}
                  <button
                    type="button"
                    class="quiet small"
                    disabled={busy}
                    onClick={() => {
                      leave();
                      change({
                        words: `the note “${own.text}” removed`,
                        make: () => removeNote(house.id, own),
                        takeBack: () => addNote(house.id, own),
                      });
                    }}
                  >
                    Remove<span class="spoken"> the note “{own.text}”</span>
                  </button>
                </span>
              </li>
            );
          })}
        </ol>
      )}
      <AddNote
        offered={at}
        busy={busy}
        add={(note) => {
          leave();
          return change({
            words: `the note “${note.text}”`,
            make: () => addNote(house.id, note),
            takeBack: () => removeNote(house.id, note),
          });
        }}
      />
    </section>
  );
}

interface AddNoteProps {
  readonly offered: string;
  readonly busy: boolean;
  readonly add: (note: { readonly at: string; readonly text: string }) => Promise<boolean>;
}

function AddNote({ offered, busy, add }: AddNoteProps) {
  const [at, setAt] = useState<string | null>(null);
  const [text, setText] = useState('');
  const [missing, setMissing] = useState<'at' | 'text' | null>(null);
  const [when, what] = [useRef<HTMLInputElement>(null), useRef<HTMLInputElement>(null)];
  const submit = async (event: Event) => {
    event.preventDefault();
    const note = { at: at ?? offered, text: text.trim() };
    const lacks = note.at === '' ? 'at' : note.text === '' ? 'text' : null;
    setMissing(lacks);
    if (lacks !== null) (lacks === 'at' ? when : what).current?.focus();
    else if (await add(note)) {
      setText('');
      setAt(null);
    }
  };
  return (
    <details class="screen-only">
      <summary>Note something</summary>
      <form class="readings-form" onSubmit={submit} noValidate>
        <fieldset>
          <legend class="spoken">A note</legend>
          <DateField
            label="When"
            type="datetime-local"
            value={at ?? offered}
            problem={missing === 'at' ? 'Give a date and a time.' : undefined}
            input={when}
            onWrite={setAt}
          />
          <FormField
            label="What"
            hint="Such as “loft hatch open”."
            {...(missing === 'text' ? { problem: 'Say what is to be remembered.' } : {})}
          >
            {(ties) => (
              <input
                {...ties}
                ref={what}
                type="text"
                maxLength={1000}
                autocomplete="off"
                value={text}
                onInput={({ currentTarget }) => setText(currentTarget.value)}
              />
            )}
          </FormField>
        </fieldset>
        <button type="submit" disabled={busy}>
          Add the note
        </button>
      </form>
    </details>
  );
}
