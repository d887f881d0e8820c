/**
 * Limiting U-values to set beside an element's own. A table is a dated example to be edited, never a verdict:
 * what applies to a job is for the local code to say.
 */
import type { ElementDesign } from './element.ts';
import type { Source } from './materials/value.ts';

export type LimitKind =
  | 'wall'
  | 'roof'
  | 'floor'
  | 'party wall'
  | 'window'
  | 'roof window'
  | 'rooflight'
  | 'door';

export interface Limit extends Source {
  readonly kind: LimitKind;
  /** [W/(m²K)] */
  readonly transmittance: number;
}

export interface LimitTable {
  readonly name: string;
  /** The day of the table's text, YYYY-MM-DD. */
  readonly dated: string;
  /** Shown beside every figure of the table. */
  readonly note: string;
  readonly limits: readonly Limit[];
}

/** An element's transmittance and the limit beside it [W/(m²K)]. */
export interface BesideLimit {
  readonly limit: Limit;
  /** Of the element less the limit: negative when it is below. */
  readonly difference: number;
}

/** An element's figure beside the table's; null when the table has none for its kind. */
export function besideLimit(transmittance: number, kind: LimitKind, table: LimitTable): BesideLimit | null {
  const limit = table.limits.find((it) => it.kind === kind);
  return limit === undefined ? null : { limit, difference: transmittance - limit.transmittance };
}

/** The kind that an element looks like: a proposal, since a door or a rooflight cannot be told from its layers. */
export function limitKindOf({
  to,
  glazed,
  buildUp,
}: Pick<ElementDesign, 'to' | 'glazed' | 'buildUp'>): LimitKind | null {
  if (glazed) return 'window';
  if (to === 'adjacent') return 'party wall';
  if (to === 'ground') return 'floor';
  if (buildUp === null) return null;
  return ({ up: 'roof', across: 'wall', down: 'floor' } as const)[buildUp.facing];
}
