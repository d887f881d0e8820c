import { expect, test } from 'vitest';
import type { HouseSummary } from '../../../server/api/shapes.ts';
import { comparedOf } from '../../../web/houses/compared.ts';

const answer: HouseSummary['answer'] = {
  stage: 'Whole record',
  heatLossWK: { value: 120, low: 100, high: 140 },
  drawnWK: 100,
  ratio: { value: 1.2, low: 1, high: 1.4 },
  verdict: 'undecided',
  timeConstantH: null,
};
const house: HouseSummary = {
  id: 'a',
  name: 'A house',
  invented: false,
  away: false,
  lastReading: null,
  state: { kind: 'assessed' },
  answer,
};

test('houses with a verdict stand side by side, in the order of the list', () => {
  const other = { ...house, id: 'b', name: 'Another' };
  expect(comparedOf([house, other]).map(({ label }) => label)).toEqual(['A house', 'Another']);
});

test('what is invented, unfinished or not assessed is not compared', () => {
  const unlike = [
    { ...house, invented: true },
    { ...house, answer: { ...answer, verdict: null } },
    { ...house, answer: { ...answer, ratio: null } },
    { ...house, answer: null },
  ];
  expect(comparedOf(unlike)).toEqual([]);
});

test('houses of one name are told apart', () => {
  const labels = comparedOf([house, { ...house, id: 'b' }]).map(({ label }) => label);
  expect(new Set(labels).size).toBe(2);
});
