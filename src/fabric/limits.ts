/**
 * Limiting U-values to set beside an element's own. A table is a dated example to be edited, never a verdict:
 * what applies to a job is for the local code to say.
 */
import { type House, type LimitKind, limitKinds } from '../house.ts';
import type { ElementDesign } from './element.ts';
import { exampleLimits } from './limitsExample.ts';
import type { Mark } from './materials/value.ts';

export interface Limit {
  readonly kind: LimitKind;
  /** GIVEN by the person in `house.json`; of the example, how its figure is known. */
  readonly mark: Mark | 'GIVEN';
  readonly source: string;
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

/** Stands beside every figure of a table, whoever gave it. */
const check = 'Check with your local code.';

/** The table that the house gives; else the example. */
export function limitTableOf({ limits: given }: Pick<House, 'limits'>): LimitTable {
  if (given === undefined) return exampleLimits;
  const { name, dated, note, uValues } = given;
  return {
    name,
    dated,
    note: note === undefined ? check : `${note} ${check}`,
    limits: limitKinds.flatMap((kind): Limit[] => {
      const transmittance = uValues[kind];
      return transmittance === undefined ? [] : [{ kind, transmittance, mark: 'GIVEN', source: name }];
    }),
  };
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
