/** What a bench is: the same work on the same input by ours and by peers, each run in a process of its own. */

/** What is done; its doing alone is timed. It returns what it made, for the account. */
export type Task = (input: string) => Promise<unknown>;

export interface Contestant {
  readonly name: string;
  /** Everything that needs doing once before: modules loaded, engines started. */
  readonly ready: (kase: string) => Promise<Task>;
  /** A package that only the bench needs, as `npm install` takes it. */
  readonly installs?: string;
  /** Makes of the input what this one alone needs, once. */
  readonly prepare?: (input: string) => Promise<void>;
}

export interface Bench {
  readonly title: string;
  /** What the work is counted in. */
  readonly unit: string;
  readonly cases: readonly {
    readonly name: string;
    /** Writes the input, a file or a folder, into a folder; how many units it holds. */
    readonly prepare: (folder: string) => { readonly input: string; readonly units: number };
  }[];
  /** Ours first; the ratios are those of ours to each other one. */
  readonly contestants: readonly Contestant[];
  /** One line on what was made, so that nobody is fast by being wrong. */
  readonly account: (made: unknown) => string;
  /** How long each of many answers took [s], where that matters more than all together. */
  readonly waits?: (made: unknown) => readonly number[];
}
