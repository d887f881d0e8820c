/** The queue of assessments: a few at a time, told about as they go, to be cancelled at any time. */

import type { Message } from '../../src/assessment.ts';
import type { HouseState, Work } from '../api/shapes.ts';
import { machineFailure, Refused } from '../refused.ts';
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
  /** How many houses are assessed at a time. */
  readonly atOnce: number;
  tell(text: string): void;
}

interface AtWork {
  readonly restsOn: string;
  readonly calculation: Calculation<unknown>;
  work: Work;
  /** Nobody wants its result any more, and nobody cancelled it either. */
  superseded: boolean;
  /** Resolves when its result is stored or it was stopped. */
  ended: Promise<void>;
}

export type Assessments = ReturnType<typeof assessmentQueue>;

export function assessmentQueue(needs: Needs) {
  const { database, software, reading, writer, calculate, atOnce, tell } = needs;
  const waiting: string[] = [];
  const running = new Map<string, AtWork>();
  const brokenDown = new Map<string, Message>();
  const { changed, watch } = watchers();
  let closed = false;

  const restsOn = ({ figures }: StoredHouse) => sha256(`${figures} ${software}`);

  /** Whether the stored outcome rests on what the house is now, and on this version of the program. */
  const isCurrent = (house: StoredHouse) => house.outcome?.restsOn === restsOn(house);

  function next(): void {
    while (!closed && running.size < atOnce) {
      const id = waiting.find((it) => !running.has(it));
      if (id === undefined) return;
      waiting.splice(waiting.indexOf(id), 1);
      const house = reading.house(id);
      if (house !== null) begin(house);
    }
  }

  function begin(house: StoredHouse): void {
    const { id } = house;
    const calculation = calculate({ kind: 'assess', database, id }, (step) => {
      own.work = assessing(step);
      changed(id);
    });
    const own: AtWork = {
      restsOn: restsOn(house),
      calculation,
      work: beginning,
      superseded: false,
      ended: calculation.result
        .then((outcome) => writer.storeOutcome(id, own.restsOn, outcome))
        .catch(async (error: unknown) => {
          if (!(error instanceof Stopped)) breakDown(id, error);
          else if (!own.superseded) await storeCancelled(id);
        })
        // Also where it could not be stored that it was cancelled.
        .finally(() => {
          running.delete(id);
          changed(id);
          next();
        }),
    };
    running.set(id, own);
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
    // Deleted meanwhile: nobody waits for it.
    if (reading.house(id) === null) return;
    const text = error instanceof Error ? error.message : String(error);
    if (!closed) tell(`The assessment of a house broke down: ${text}`);
    const machine = error instanceof Refused ? error : machineFailure(error);
    brokenDown.set(id, machine?.problems[0] ?? faultOfProgram);
  }

  /** Puts a house into the queue, unless it is in it already. */
  function start(id: string): void {
    brokenDown.delete(id);
    forgetCancelled(id);
    if (!running.has(id) && !waiting.includes(id)) waiting.push(id);
    next();
    changed(id);
  }

  /** Whether it was waiting. */
  function dequeue(id: string): boolean {
    const at = waiting.indexOf(id);
    if (at >= 0) waiting.splice(at, 1);
    return at >= 0;
  }

  /**
   * After a change of the house: what is under way for it as it was is stopped; a result of the house as it now is
   * stays or is taken up again; else it is assessed.
   */
  async function bringUpToDate(id: string): Promise<void> {
    const house = reading.house(id);
    if (house === null) return;
    const wanted = restsOn(house);
    const own = running.get(id);
    if (own?.restsOn === wanted) return;
    dequeue(id);
    if (own !== undefined) {
      own.superseded = true;
      own.calculation.stop();
      await own.ended;
      return bringUpToDate(id); // it may have changed again meanwhile
    }
    brokenDown.delete(id);
    if (isCurrent(house)) changed(id);
    else if (reading.hasFormerResult(id, wanted)) {
      await writer.takeUpResult(id, wanted);
      changed(id);
    } else start(id);
  }

  return {
    isCurrent,

    stateOf(house: StoredHouse): HouseState {
      const own = running.get(house.id);
      if (own !== undefined) return { kind: 'assessing', ...own.work };
      if (waiting.includes(house.id)) return { kind: 'assessing', ...queued };
      const broken = brokenDown.get(house.id);
      if (broken !== undefined) return { kind: 'not assessed', problems: [broken] };
      const { outcome } = house;
      if (outcome === null) return { kind: 'not assessed', problems: [notYet] };
      return outcome.kind === 'not assessed'
        ? { kind: 'not assessed', problems: outcome.problems }
        : { kind: outcome.kind };
    },

    start,

    bringUpToDate,

    /** Resolves when the assessment has ended; at once when there is none. */
    async cancel(id: string): Promise<void> {
      const own = running.get(id);
      if (dequeue(id)) {
        await storeCancelled(id);
        changed(id);
      } else if (own !== undefined) {
        own.calculation.stop();
        await own.ended;
      }
    },

    /** Calls back on every change of a house's state, until the returned function is called. */
    watch,
    changed,

    /** Stops the work without marking anything as cancelled: it begins again at the next start. */
    async close(): Promise<void> {
      closed = true;
      for (const { calculation } of running.values()) calculation.stop();
      await Promise.all(Array.from(running.values(), ({ ended }) => ended));
    },
  };
}

const queued: Work = { done: 0, what: 'Waiting until another house is assessed.' };
const beginning: Work = { done: 0, what: 'Taking the logs out of the store.' };

const faultOfProgram: Message = {
  code: 'assessment-broke-down',
  text: 'The assessment broke down before it had a result.',
  remedy: 'Assess the house again; if it breaks down again, the program has a fault: please report it.',
};

const notYet: Message = {
  code: 'not-assessed-yet',
  text: 'This house has not been assessed yet.',
  remedy: 'Ask for its assessment.',
};
