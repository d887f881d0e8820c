import { median } from 'simple-statistics';
import { expect, test } from 'vitest';
import { assessRecord } from '../../src/assess.ts';
import { logSdOf } from '../../src/maths/logInterval.ts';
import { proved } from './judging/told.ts';

/** Of houses whose loggers alone leave it open, what a heated night promises to leave and what one then left. */
const types = [
  'loft room',
  'timber frame',
  'cavity walls',
  'studio on a bare slab',
  'log walls',
  'straw and lime',
];
const shares = types.flatMap((type) => {
  const before = proved(type, 'loggers, layers known');
  const after = proved(type, 'one heated night');
  const promised = assessRecord(before.house, before.record).stages[0].candidates.find(
    ({ test: it }) => it.kind === 'heated-night',
  );
  const came = assessRecord(after.house, after.record).stages[0].headline;
  return promised === undefined || came === null
    ? []
    : [logSdOf(promised.ratio) / logSdOf(came.heatLossCoefficient)];
});

test('the interval that a heated night promises is within 25 % of what one then leaves, in the median', () => {
  expect(shares.length).toBeGreaterThanOrEqual(3);
  expect(Math.abs(median(shares) - 1)).toBeLessThan(0.25);
});

test('it never promises less than a third of what comes', () => {
  expect(Math.min(...shares)).toBeGreaterThan(1 / 3);
});
