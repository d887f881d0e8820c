/** The queue of assessments: one at a time, told about as it goes, to be cancelled at any time. */

import type { Message } from '../../src/assessment.ts';
import type { HouseState, Work } from '../api/shapes.ts';
import type { Reading, StoredHouse } from '../store/reading.ts';
import { sha256 } from '../store/sha256.ts';
import { assessing } from './stepWords.ts';
import { type Calculate, type Calculation, Stopped } from './tasks.ts';
import { watchers } from './watchers.ts';
import type { Writer } from './writer.ts';

interface Needs {
  /** Path of the database file. */
  readonly database: string;
  /** What distinguishes the results of one version of the program from another's. */
  readonly software: string;
  readonly reading: Reading;
  readonly writer: Writer;
  readonly calculate: Calculate;
  tell(text: string): void;
}

export type Assessments = ReturnType<typeof assessmentQueue>;

export function assessmentQueue({ database, software, reading, writer, calculate, tell }: Needs) {
  const waiting: string[] = [];
  let running: { id: string; work: Work; calculation: Calculation<unknown>; ended: Promise<void> } | null =
    null;
  const brokenDown = new Map<string, Message>();
  const { changed, watch } = watchers();
  let closed = false;

  const restsOn = ({ content }: StoredHouse) => sha256(`${content} ${software}`);

  /** Whether the stored outcome is of this very content and version. */
  const isCurrent = (house: StoredHouse) => house.outcome?.restsOn === restsOn(house);

  function next(): void {
    if (running !== null || closed) return;
    const id = waiting.shift();
    if (id === undefined) return;
    const house = reading.house(id);
    if (house === null) {
      next();
      return;
    }
    const calculation = calculate({ kind: 'assess', database, id }, (step) => {
      if (running?.id === id) running.work = assessing(step);
      changed(id);
    });
    const ended = calculation.result
      .then((outcome) => writer.storeOutcome(id, restsOn(house), outcome))
      .catch((error: unknown) => (error instanceof Stopped ? storeCancelled(id) : breakDown(id, error)))
      .then(() => {
        running = null;
        changed(id);
        next();
      });
    running = { id, work: beginning, calculation, ended };
  }

  /** A result that still holds stays; otherwise it is kept that the person did not want one. */
  async function storeCancelled(id: string): Promise<void> {
    const house = reading.house(id);
    if (closed || house === null || isCurrent(house)) return;
    await writer.storeOutcome(id, restsOn(house), { kind: 'cancelled' });
  }

  /** Whoever asks again does not want it cancelled any more, not even when the program is stopped before the result. */
  function forgetCancelled(id: string): void {
    if (reading.house(id)?.outcome?.kind !== 'cancelled') return;
    writer
      .storeOutcome(id, 'nothing: it was asked for again', { kind: 'cancelled' })
      .catch((error: unknown) => tell(`It could not be stored that an assessment was asked for: ${error}`));
  }

  function breakDown(id: string, error: unknown): void {
    const text = error instanceof Error ? error.message : String(error);
    if (!closed) tell(`The assessment of a house broke down: ${text}`);
    brokenDown.set(id, {
      code: 'assessment-broke-down',
      text: 'The assessment broke down before it had a result.',
      remedy: 'Assess the house again; if it breaks down again, the program has a fault: please report it.',
    });
  }

  return {
    isCurrent,

    stateOf(house: StoredHouse): HouseState {
      if (running?.id === house.id) return { kind: 'assessing', ...running.work };
      if (waiting.includes(house.id)) return { kind: 'assessing', ...queued };
      const broken = brokenDown.get(house.id);
      if (broken !== undefined) return { kind: 'not assessed', problems: [broken] };
      const { outcome } = house;
      if (outcome === null) return { kind: 'not assessed', problems: [notYet] };
      return outcome.kind === 'not assessed'
        ? { kind: 'not assessed', problems: outcome.problems }
        : { kind: outcome.kind };
    },

    /** Puts a house into the queue, unless it is in it already. */
    start(id: string): void {
      brokenDown.delete(id);
      forgetCancelled(id);
      if (running?.id !== id && !waiting.includes(id)) waiting.push(id);
      next();
      changed(id);
    },

    /** Resolves when the assessment has ended; at once when there is none. */
    async cancel(id: string): Promise<void> {
      const at = waiting.indexOf(id);
      if (at >= 0) {
        waiting.splice(at, 1);
        await storeCancelled(id);
        changed(id);
      } else if (running?.id === id) {
        running.calculation.stop();
        await running.ended;
      }
    },

    /** Calls back on every change of a house's state, until the returned function is called. */
    watch,
    changed,

    /** Stops the work without marking anything as cancelled: it begins again at the next start. */
    async close(): Promise<void> {
      closed = true;
      running?.calculation.stop();
      await running?.ended;
    },
  };
}

const queued: Work = { done: 0, what: 'Waiting until another house is assessed.' };
const beginning: Work = { done: 0, what: 'Taking the logs out of the store.' };

const notYet: Message = {
  code: 'not-assessed-yet',
  text: 'This house has not been assessed yet.',
  remedy: 'Ask for its assessment.',
};
