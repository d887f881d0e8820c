/** The layouts in their order: migration n leads to version n. A migration that was published is never changed. */
import { migration001 } from './001.ts';
import { migration002 } from './002.ts';
import { migration003 } from './003.ts';
import { migration004 } from './004.ts';
import { migration005 } from './005.ts';
import { migration006 } from './006.ts';

export const migrations: readonly string[] = [
  migration001,
  migration002,
  migration003,
  migration004,
  migration005,
  migration006,
];
