/** The sentences of house.json: what is wrong with it, and what to do. */
import type { HouseProblem } from '../houseFile.ts';
import type { SentencesFor } from './sentence.ts';

export const aboutHouse: SentencesFor<HouseProblem> = {
  'json-broken': ({ what }) => ({
    text: `The file is not valid JSON here: ${what}.`,
    remedy: 'Look for a missing comma, bracket or quote at this place or just before it.',
  }),
  'key-unknown': ({ key, nearest, known }) => ({
    text: `“${key}” is not a key here.`,
    remedy:
      nearest === null ? `Keys that may stand here: ${known.join(', ')}.` : `Did you mean “${nearest}”?`,
  }),
  'key-missing': ({ expected }) => ({ text: 'This key is missing.', remedy: `Give ${expected}.` }),
  'value-unexpected': ({ found, expected }) => ({ text: `Found ${found}.`, remedy: `Give ${expected}.` }),
};
