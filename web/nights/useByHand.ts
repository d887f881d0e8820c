/**
 * A house whose person changes it by hand: the change is kept, the house assessed again, and what was there stays in
 * sight until the new is.
 */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { HouseDetail, HouseState, Work } from '../../server/api/shapes.ts';
import type { Assessment, Message } from '../../src/assessment.ts';
import { followAssessment, getHouse, problemsOf } from '../api.ts';

export interface AssessedHouse {
  readonly house: HouseDetail;
  readonly assessment: Assessment;
}

/** What is changed, in words that follow "Kept:", and how it is taken back. */
export interface Change {
  readonly words: string;
  readonly make: () => Promise<unknown>;
  readonly takeBack: () => Promise<unknown>;
}

export type ByHandState =
  | { readonly kind: 'rest' }
  | { readonly kind: 'keeping' }
  | ({ readonly kind: 'assessing' } & Work)
  | { readonly kind: 'done'; readonly words: string }
  | { readonly kind: 'failed'; readonly problems: readonly Message[] };

export interface ByHand extends AssessedHouse {
  readonly state: ByHandState;
  readonly busy: boolean;
  /** @returns whether it was kept; the assessment goes on after that */
  readonly change: (change: Change) => Promise<boolean>;
  /** The last change, as long as it can be taken back from here. */
  readonly last: Change | null;
  readonly takeBack: () => Promise<boolean>;
}

export function useByHand(first: AssessedHouse): ByHand {
  const [latest, setLatest] = useState(first);
  const [state, setState] = useState<ByHandState>({ kind: 'rest' });
  const [last, setLast] = useState<Change | null>(null);
  const stopFollowing = useRef(() => {});
  useEffect(() => setLatest(first), [first.house]);
  useEffect(() => () => stopFollowing.current(), []);
  const { id } = first.house;

  async function assessedAgain(words: string): Promise<void> {
    try {
      const house = await getHouse(id);
      setLatest((before) => ({ house, assessment: house.assessment ?? before.assessment }));
      setState(outcomeOf(house.state, words));
    } catch (thrown) {
      setState({ kind: 'failed', problems: problemsOf(thrown) });
    }
  }

  function follow(words: string): void {
    stopFollowing.current();
    stopFollowing.current = followAssessment(id, ({ state: now }) => {
      if (now.kind === 'assessing') return setState(now);
      stopFollowing.current();
      assessedAgain(words);
    });
  }

  async function make(work: () => Promise<unknown>, words: string, after: Change | null): Promise<boolean> {
    setState({ kind: 'keeping' });
    try {
      await work();
    } catch (thrown) {
      setState({ kind: 'failed', problems: problemsOf(thrown) });
      return false;
    }
    setLast(after);
    follow(words);
    return true;
  }

  return {
    ...latest,
    state,
    busy: state.kind === 'keeping' || state.kind === 'assessing',
    change: (change) => make(change.make, `Kept: ${change.words}.`, change),
    last,
    takeBack: async () => last !== null && make(last.takeBack, `Taken back: ${last.words}.`, null),
  };
}

const outcomeOf = (state: HouseState, words: string): ByHandState => {
  if (state.kind === 'not assessed') return { kind: 'failed', problems: state.problems };
  if (state.kind === 'cancelled') return { kind: 'failed', problems: [stopped] };
  return { kind: 'done', words: `${words} The house is assessed again.` };
};

const stopped: Message = {
  code: 'assessment-stopped',
  text: 'The change is kept, but its assessment was stopped: the figures here are those from before.',
  remedy: 'Load the page again, and have the house assessed.',
};
