/** What the pages about signing in and about links may know of the answers: beside `shapes.ts`. */
import type { Assessment } from '../../src/assessment.ts';
import type { LinkScope } from '../access/links.ts';
import type { FileChange, HouseState } from './shapes.ts';

/** Who asks: this machine, which needs nothing; someone who has signed in; someone who has not. */
export type AccessAnswer = { readonly kind: 'this machine' | 'signed in' | 'not signed in' };

/** The links of one house, without what stands in them: that was told once. */
export interface LinksAnswer {
  readonly links: readonly {
    readonly number: number;
    readonly whose: string;
    readonly scope: LinkScope;
    /** Instants [s]. */
    readonly made: number;
    readonly until: number;
  }[];
  /** How others reach this server: `by` is null when they do not. */
  readonly served: { readonly by: 'http' | 'https' | null; readonly addresses: readonly string[] };
  /** A date until which the house is kept; null while nothing was agreed. */
  readonly keepUntil: string | null;
}

/** A link that was made just now: the only time that it is told. */
export interface MadeLink {
  /** "/l/…", below each of the addresses. */
  readonly path: string;
}

/** What a link shows of its house. */
export interface SharedHouse {
  readonly name: string;
  readonly timeZone: string;
  readonly invented: boolean;
  readonly lastReading: string | null;
  readonly state: HouseState;
  /** Without the list of files and what the builder is to check. */
  readonly assessment: Assessment | null;
  readonly mayAdd: boolean;
  /** When the link runs out [s]. */
  readonly until: number;
}

/** What was brought by a link, as it was understood. */
export interface SharedBringing {
  readonly files: readonly {
    readonly file: string;
    /** Null for what is no later export of this house. */
    readonly change: FileChange | null;
  }[];
  /** Something new is in it, and it can be kept. */
  readonly ready: boolean;
}
