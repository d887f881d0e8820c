/** Houses that are out of sight: brought back, or deleted for good with a second word. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { HouseSummary } from '../../server/api/shapes.ts';
import { DELETED_WITH_IT } from '../access/words.ts';
import { deleteHouse, putAway, storeDemonstration } from '../api.ts';

/** @param words what is told once it is done */
export type Act = (done: Promise<unknown>, words: string) => void;

interface PutAwayProps {
  readonly houses: readonly HouseSummary[];
  /** The demonstration house is on its way. */
  readonly coming: boolean;
  readonly act: Act;
}

export function PutAway({ houses, coming, act }: PutAwayProps) {
  const [asked, setAsked] = useState<string | null>(null);
  const list = useRef<HTMLUListElement>(null);
  const leave = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (asked !== null) leave.current?.focus();
  }, [asked]);
  const away = houses.filter((house) => house.away);
  const demonstrationGone = !coming && houses.every(({ invented }) => !invented);
  if (away.length === 0 && !demonstrationGone) return null;
  return (
    <ul class="away small" aria-label="Put away" ref={list} tabIndex={-1}>
      {away.map(({ id, name, invented }) => (
        <li key={id}>
          <button type="button" class="quiet" onClick={() => act(putAway(id, false), `“${name}” is back.`)}>
            {invented ? 'Bring the demonstration house back' : `Bring “${name}” back`}
          </button>
          {invented ? null : asked === id ? (
            <>
              <span>{DELETED_WITH_IT}</span>
              <button
                type="button"
                class="quiet"
                onClick={() => act(deleteHouse(id), `“${name}” is deleted.`)}
              >
                Delete “{name}” for good
              </button>
              <button
                ref={leave}
                type="button"
                class="quiet"
                onClick={() => {
                  setAsked(null);
                  list.current?.focus();
                }}
              >
                Leave it
              </button>
            </>
          ) : (
            <button
              type="button"
              class="quiet"
              aria-label={`Delete it: ${name}`}
              onClick={() => setAsked(id)}
            >
              Delete it
            </button>
          )}
        </li>
      ))}
      {demonstrationGone ? (
        <li>
          <button
            type="button"
            class="quiet"
            onClick={() => act(storeDemonstration(), 'The demonstration house is on its way.')}
          >
            Bring the demonstration house back
          </button>
        </li>
      ) : null}
    </ul>
  );
}
