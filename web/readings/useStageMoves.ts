/** Stages as they are being moved, before they are kept. */
import { useMemo, useState } from 'preact/hooks';
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import type { StageEntry } from '../../src/house.ts';
import { instantOfLocal, localTimeOf } from '../charts/localTime.ts';
import type { End } from './StageHandles.tsx';

/** A stage's bounds, as local times of the house. */
export interface MovedStage {
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

export interface StageMoves {
  /** As they would be, with instants [s]. */
  readonly stages: ReadingsAnswer['stages'];
  readonly local: readonly MovedStage[];
  /** Those that are other than they are kept. */
  readonly moved: readonly MovedStage[];
  /** What stands against keeping them, by the name of the stage. */
  readonly problems: ReadonlyMap<string, string>;
  readonly moveTo: (name: string, end: End, instant: number) => void;
  readonly write: (name: string, end: End, local: string) => void;
  readonly reset: () => void;
}

export function useStageMoves(kept: readonly StageEntry[], timeZone: string): StageMoves {
  const [written, setWritten] = useState<ReadonlyMap<string, MovedStage>>(new Map());
  const local = useMemo(
    () => kept.map(({ name, from, to }) => written.get(name) ?? { name, from, to }),
    [kept, written],
  );
  // The plots are drawn anew only when these are others.
  const stages = useMemo(
    () =>
      local.flatMap(({ name, from, to }) => {
        const [a, b] = [instantOfLocal(from, timeZone), instantOfLocal(to, timeZone)];
        return a === null || b === null ? [] : [{ name, from: a, to: b }];
      }),
    [local, timeZone],
  );
  const write = (name: string, end: End, time: string) => {
    const before = local.find((it) => it.name === name);
    if (before !== undefined) setWritten(new Map(written).set(name, { ...before, [end]: time }));
  };
  return {
    local,
    stages,
    moved: local.filter(({ name, from, to }) =>
      kept.some((it) => it.name === name && (it.from !== from || it.to !== to)),
    ),
    problems: new Map(
      local.flatMap(({ name, from, to }): [string, string][] => {
        if (from === '' || to === '') return [[name, 'Give a date and a time.']];
        return from < to ? [] : [[name, 'A stage ends after it begins.']];
      }),
    ),
    moveTo: (name, end, instant) => write(name, end, localTimeOf(instant, timeZone)),
    write,
    reset: () => setWritten(new Map()),
  };
}
