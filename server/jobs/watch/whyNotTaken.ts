/** Why a file of a watched folder was not taken, and what comes of that. */
import type { Message } from '../../../src/assessment.ts';
import { machineFailure, Refused, refused } from '../../refused.ts';
import { FILE_CHANGED } from './openedFile.ts';

const PASSING = ['house-changed', 'being-kept', 'files-gone', FILE_CHANGED];

/** A file or a house that changed in the middle: it is tried again when it stands still. */
export const isPassing = (error: unknown): boolean =>
  error instanceof Refused && error.problems.some(({ code }) => PASSING.includes(code));

export const problemsOf = (error: unknown): readonly Message[] =>
  error instanceof Refused ? error.problems : (machineFailure(error) ?? notTaken()).problems;

/** Not the file's fault: it is not kept that it was refused, and tried again. */
export const isOfTheMachine = (error: unknown): boolean =>
  error instanceof Refused ? error.status >= 503 : machineFailure(error) !== null;

const notTaken = () =>
  refused(
    500,
    'not-taken',
    'Something in the program broke down over this file.',
    'Bring it on the page of its house; if that breaks down too, please report it.',
  );
