/** What is refused of a house folder that is being brought, and what to do then. */
import type { BringingPreview } from '../api/shapes.ts';
import { Refused, refused } from '../refused.ts';

export const tooLarge = (bytes: number) =>
  refused(
    413,
    'too-large',
    `This file is larger than ${Math.round(bytes / 1024 / 1024)} MB, the most that is taken.`,
    'Export the record in parts or at a longer interval, or start the program with a larger --largest-mb.',
  );

export const noSuchBringing = () =>
  refused(
    404,
    'no-such-bringing',
    'This house folder is not waiting here.',
    'It was kept or dropped, its house deleted, or the program started again: bring the folder once more.',
  );

export const filesGone = () =>
  refused(
    410,
    'files-gone',
    'Files of this house folder were removed from the data folder while they waited there; nothing of it was stored.',
    'Bring the folder once more.',
  );

export const stopping = () =>
  refused(
    503,
    'stopping',
    'The program is being stopped; nothing of this was stored.',
    'Start it again, then bring this once more.',
  );

export const beingKept = () =>
  refused(
    409,
    'being-kept',
    'A house of this name is being stored right now.',
    'Wait until it is in the list of houses, then try again.',
  );

export const stoppedHalfWay = (file: string) =>
  new Refused(400, [
    {
      code: 'upload-stopped',
      text: 'The upload stopped before its end; nothing of the file was kept.',
      where: { file },
      remedy: 'Send the file again.',
    },
  ]);

export const notReady = (problems: BringingPreview['problems'], missing: readonly string[]) =>
  new Refused(409, [
    ...(problems.length > 0
      ? problems
      : [
          {
            code: 'not-ready',
            text: `This cannot be kept yet: an inside or an outdoor temperature is missing. Not come yet: ${missing.join(', ')}.`,
            remedy: 'Add these files, or take them out of house.json.',
          },
        ]),
  ]);
