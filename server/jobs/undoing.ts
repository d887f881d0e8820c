/** Going back to the version of a house before its latest one. */
import { randomBytes } from 'node:crypto';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { noSuchHouse, Refused, refused } from '../refused.ts';
import type { Reading } from '../store/reading.ts';
import type { Calculate, Calculation } from './tasks.ts';
import type { Writer } from './writer.ts';

interface Needs {
  /** For the readings on their way into the store. */
  readonly workFolder: string;
  /** Path of the database file. */
  readonly database: string;
  readonly reading: Reading;
  readonly writer: Writer;
  readonly calculate: Calculate;
}

export type Undoing = ReturnType<typeof undoingIn>;

export function undoingIn({ workFolder, database, reading, writer, calculate }: Needs) {
  const underWay = new Set<Calculation<unknown>>();
  return {
    /** Resolves when the house is what it was before its latest import. */
    async undo(id: string): Promise<void> {
      const house = reading.house(id);
      if (house === null) throw noSuchHouse();
      const into = join(workFolder, `undo ${randomBytes(6).toString('base64url')}`);
      const calculation = calculate({ kind: 'version before', database, id, into });
      underWay.add(calculation);
      try {
        const before = await calculation.result;
        if (before.kind === 'none') throw nothingToUndo();
        if (before.kind === 'problems') throw new Refused(409, before.problems);
        await writer.undoVersion(id, house.content, before.house);
      } finally {
        underWay.delete(calculation);
        await rm(into, { recursive: true, force: true });
      }
    },

    close(): void {
      for (const calculation of underWay) calculation.stop();
    },
  };
}

const nothingToUndo = () =>
  refused(
    409,
    'nothing-to-undo',
    'Nothing was added to this house since it was first kept.',
    'To be rid of the house itself, delete it.',
  );
