/** What the API refuses, and how it says so: a status, and what happened, where, and what to do. */
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Message } from '../src/assessment.ts';
import { HOUSE_CHANGED } from './store/houseChanged.ts';

export class Refused extends Error {
  constructor(
    readonly status: ContentfulStatusCode,
    readonly problems: readonly Message[],
  ) {
    super(problems.map(({ text }) => text).join(' '));
  }
}

export const refused = (status: ContentfulStatusCode, code: string, text: string, remedy?: string) =>
  new Refused(status, [{ code, text, ...(remedy === undefined ? {} : { remedy }) }]);

export const noSuchHouse = () =>
  refused(
    404,
    'no-such-house',
    'There is no such house here.',
    'It may have been deleted: go back to the houses.',
  );

export const houseChanged = () =>
  refused(
    409,
    'house-changed',
    'The house was changed meanwhile; nothing of this was stored.',
    'Look at the house as it is now, then begin again.',
  );

const FULL = ['SQLITE_FULL', 'ENOSPC', 'EDQUOT'];
const READ_ONLY = ['SQLITE_READONLY', 'SQLITE_CANTOPEN', 'EROFS', 'EACCES', 'EPERM'];

/** A failure of the store that a person can do something about; null for any other. */
export function machineFailure(error: unknown): Refused | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === HOUSE_CHANGED) return houseChanged();
  if (FULL.includes(code))
    return refused(
      507,
      'storage-full',
      'The disk that holds the data is full; nothing of this was stored.',
      'Make room, then try again.',
    );
  if (READ_ONLY.some((known) => code.startsWith(known)))
    return refused(
      507,
      'storage-read-only',
      'The data folder cannot be written to; nothing of this was stored.',
      'Allow this program to write to it, then try again.',
    );
  if (code.startsWith('SQLITE_BUSY'))
    return refused(
      503,
      'storage-busy',
      'Another program holds the database; nothing of this was stored.',
      'Close the other program, then try again.',
    );
  return null;
}
