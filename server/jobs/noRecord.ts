/** Why a house cannot be assessed at all. */
import type { Message } from '../../src/assessment.ts';

export const noRecord = (missing: 'inside' | 'outside'): Message =>
  missing === 'inside'
    ? {
        code: 'no-inside-temperature',
        text: 'No readable inside temperature remains, so there is nothing to assess.',
        remedy: 'Check the loggers with "place": "inside".',
      }
    : {
        code: 'no-outdoor-temperature',
        text: 'There is no outdoor temperature, so a fall inside says nothing.',
        remedy: 'Add a logger with "place": "outside" or a weather file.',
      };
