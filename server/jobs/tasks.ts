/** What is worked out beside the request thread: plain functions, to which a worker only passes messages. */
import { type HouseToStore, houseToStore } from '../store/houseToStore.ts';
import type { Outcome } from '../store/writing.ts';
import { assessHouse } from './assessHouse.ts';
import { type FolderPreview, previewFolder } from './previewFolder.ts';
import { readStaged, type StagedFolder } from './stagedFolder.ts';

export interface TaskResults {
  readonly assess: Outcome;
  readonly preview: FolderPreview;
  /** Null when there is no valid `house.json`. */
  readonly read: HouseToStore | null;
}

export type Task =
  | { readonly kind: 'assess'; readonly database: string; readonly id: string }
  | { readonly kind: 'preview'; readonly folder: StagedFolder }
  | { readonly kind: 'read'; readonly folder: StagedFolder };

export type TaskOf<K extends Task['kind']> = Extract<Task, { kind: K }>;

/** @param onProgress told the share that is done, from 0 to 1 */
export function runTask(task: Task, onProgress: (done: number) => void): TaskResults[Task['kind']] {
  switch (task.kind) {
    case 'assess':
      return assessHouse(task.database, task.id, onProgress);
    case 'preview':
      return previewFolder(task.folder);
    case 'read': {
      const read = readStaged(task.folder);
      return read.kind === 'house' ? houseToStore(read.json, read.house, read.files) : null;
    }
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
  onProgress?: (done: number) => void,
) => Calculation<TaskResults[K]>;

export class Stopped extends Error {}
