/** The layouts in their order: migration n leads to version n. A migration that was published is never changed. */
import { migration001 } from './001.ts';
import { migration002 } from './002.ts';

export const migrations: readonly string[] = [migration001, migration002];
