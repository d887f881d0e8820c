/** What the builder of the demonstration house is told, from the first log to the next test. The house is invented. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readHouseFolder } from '../server/houseFolder.ts';
import { assess } from '../src/assess.ts';
import type { Estimate } from '../src/assessment.ts';
import { reportOf } from '../src/report.ts';
import { changeOfYearSentence, gapSentence, whereToLookSentence } from '../src/words/index.ts';

const here = new URL('.', import.meta.url).pathname;
const reading = await readHouseFolder(`${here}../sample-logs`);
if (reading.kind !== 'house') throw new Error('no house in sample-logs');
const assessing = assess(reading.house, reading.files);
if (assessing.kind !== 'assessed') throw new Error('not assessed');
const { stages, comparisons, design, warnings } = reportOf(assessing.evidence);
const [before, after] = stages;
const [change] = comparisons;

const truth: { stages: { heatLossWK: { whole: number }; airChangesPerHour: number }[] } = JSON.parse(
  readFileSync(`${here}proving/sampleTruth.json`, 'utf8'),
);
const [wasWK, isWK] = truth.stages.map(({ heatLossWK }) => heatLossWK.whole);
const [wasAir, isAir] = truth.stages.map(({ airChangesPerHour }) => airChangesPerHour);

const holds = (it: Estimate | null | undefined, value: number) => {
  expect(it?.low).toBeLessThan(value);
  expect(it?.high).toBeGreaterThan(value);
};
const codes = (messages: readonly { readonly code: string }[]) => messages.map(({ code }) => code);

test('before the openings are closed it loses what it truly loses, and there is no verdict on an unfinished house', () => {
  holds(before.heatLossWK, wasWK);
  expect(before.gap?.verdict).toBeNull();
  expect(codes(before.notes)).toContain('stage-not-complete');
});

test('its watts before come from the heated night after', () => {
  expect(before.tier).toBe('heated-night');
  const leading = before.estimates.find(({ method }) => method === before.heatLossWK?.method);
  expect(codes(leading?.notes ?? [])).toContain('calibrated-by-stage');
});

test('afterwards it loses less, and the heated night is used', () => {
  holds(after.heatLossWK, isWK);
  expect(after.nights.filter(({ heated }) => heated).map(({ date }) => date)).toEqual(['2027-02-04']);
});

test('that closing the openings helped is sure: the ratio lies below 1 and holds the truth', () => {
  holds(change.heatLossRatio, isWK / wasWK);
  expect(change.heatLossRatio?.high).toBeLessThan(1);
});

test('so is what it saves, in watts, in air and in a year', () => {
  holds(change.heatLossDifferenceWK, isWK - wasWK);
  holds(change.airChangesPerHour, isAir - wasAir);
  expect(changeOfYearSentence(change)).toMatch(/^Over a standard year that is \d+ to \d+ kWh less heat\.$/);
});

test('whether it performs as drawn is not: the true ratio is 1.11, and the range has both 1 and the allowance in it', () => {
  const drawn = design?.heatLossAsTestedWK ?? Number.NaN;
  holds(after.gap?.ratio, isWK / drawn);
  expect(after.gap?.verdict).toBe('undecided');
  expect(gapSentence(after.gap ?? { ratio: { value: 1, low: 1, high: 1 }, verdict: null })).toContain(
    'or nothing more',
  );
});

test('no room is accused: the fault was spread over the house', () => {
  expect(whereToLookSentence(after)).toContain('No room or roof space stands out');
});

test('the ways to the heat loss agree', () => {
  expect(after.agreement?.agree).toBe(true);
});

test('the next step is a stronger heated night, with the cautions and an honest chance', () => {
  const [next] = after.next;
  expect(next.code).toBe('next-stays-open');
  expect(next.remedy).toContain('Electric heat only');
  const [best] = after.furtherTests ?? [];
  expect(best.test).toBe('heated-night');
  expect(best.chanceToDecide).toBeGreaterThan(0);
  expect(best.chanceToDecide).toBeLessThan(0.5);
});

test('nothing of it is a warning that nobody can mend', () => {
  for (const { text, remedy } of warnings) expect(remedy, text).toBeTruthy();
});
