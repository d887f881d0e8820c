/** What is worked out beside the request thread: plain functions, to which a worker only passes messages. */
import type { AssessStep } from '../../src/assess.ts';
import type { Outcome } from '../store/outcomes.ts';
import { assessHouse } from './assessHouse.ts';
import { type FolderToPrepare, type PreparedFolder, prepareFolder } from './prepareFolder.ts';
import { type VersionBefore, versionBefore } from './versionBefore.ts';

export interface TaskResults {
  readonly assess: Outcome;
  readonly prepare: PreparedFolder;
  readonly 'version before': VersionBefore;
}

export type Task =
  | { readonly kind: 'assess'; readonly database: string; readonly id: string }
  | ({ readonly kind: 'prepare' } & FolderToPrepare)
  | {
      readonly kind: 'version before';
      readonly database: string;
      readonly id: string;
      /** A folder for the readings that are to be stored. */
      readonly into: string;
    };

export type TaskOf<K extends Task['kind']> = Extract<Task, { kind: K }>;

/** @param onStep told of each step before it is taken */
export function runTask(task: Task, onStep: (step: AssessStep) => void): TaskResults[Task['kind']] {
  switch (task.kind) {
    case 'assess':
      return assessHouse(task.database, task.id, onStep);
    case 'prepare':
      return prepareFolder(task, onStep);
    case 'version before':
      return versionBefore(task.database, task.id, task.into);
  }
}

/** A task at work. */
export interface Calculation<Result> {
  /** Rejects with `Stopped` when it was stopped, with any other error when its worker broke down. */
  readonly result: Promise<Result>;
  stop(): void;
}

export type Calculate = <K extends Task['kind']>(
  task: TaskOf<K>,
  onStep?: (step: AssessStep) => void,
) => Calculation<TaskResults[K]>;

export class Stopped extends Error {}
