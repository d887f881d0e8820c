/** What the API refuses, and how it says so: a status, and what happened, where, and what to do. */
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Message } from '../src/assessment.ts';
import { machineFault } from './machineFault.ts';
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

/** A failure of the store that a person can do something about; null for any other. */
export function machineFailure(error: unknown): Refused | null {
  if (error instanceof Error && 'code' in error && error.code === HOUSE_CHANGED) return houseChanged();
  const fault = machineFault(error);
  return (
    fault &&
    refused(
      fault.status,
      fault.code,
      `${fault.text}; nothing of this was stored.`,
      `${fault.remedy}, then try again.`,
    )
  );
}
