import { expect, test } from 'vitest';
import { emptyDraft, readHeat } from '../../../web/loggers/heatDraft.ts';

const spell = { ...emptyDraft, from: '2027-02-04T17:00', to: '2027-02-04T23:00' };

test('two counts of a meter are the energy between them, with the digits that it shows', () => {
  expect(readHeat({ ...spell, before: '1204,3', after: '1225.4' })).toEqual({
    entry: { from: spell.from, to: spell.to, energyKWh: 21.1 },
  });
});

test('a steady power is kept with how far it may be off', () => {
  expect(readHeat({ ...spell, how: 'power', power: '2000', plusMinus: '5' })).toEqual({
    entry: { from: spell.from, to: spell.to, powerW: 2000, plusMinusPercent: 5 },
  });
});

test('what is missing or cannot be is told at its field, and nothing else is', () => {
  const wrongAt = (draft: typeof spell) => {
    const read = readHeat(draft);
    return 'problems' in read ? Object.keys(read.problems) : [];
  };
  expect(wrongAt(emptyDraft)).toEqual(['from', 'to', 'before', 'after']);
  expect(wrongAt({ ...spell, to: spell.from, how: 'energy', energy: '3' })).toEqual(['to']);
  expect(wrongAt({ ...spell, before: '10', after: '9' })).toEqual(['after']);
  expect(wrongAt({ ...spell, how: 'energy', energy: '-3' })).toEqual(['energy']);
  expect(wrongAt({ ...spell, how: 'energy', energy: '3', plusMinus: '101' })).toEqual(['plusMinus']);
});
