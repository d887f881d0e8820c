/** On simulated houses, where it is known that nothing was opened and nobody heated by night. */
import { describe, expect, test } from 'vitest';
import { type JudgedNight, judgeNights, poolTimeConstants } from '../../src/cooling/index.ts';
import { refit } from '../../src/cooling/refit.ts';
import { simulatedWinter, start, wallKinds } from './simulatedWinter.ts';

const seeds = [500, 501, 502];
const houses = seeds.flatMap((seed) => wallKinds.map((kind) => simulatedWinter(kind, seed)));
const judged = houses.map(({ record, nights }) => judgeNights(record, nights.slice(0, -1)));

describe('honest nights of a winter', () => {
  test('are told of no opening, no cycling, no warmed room, no doubt in the outdoor logger', () => {
    const codes = judged.flat().flatMap(({ reasons }) => reasons.map(({ code }) => code));
    // What mild weather, an unheated day and deep mass do to a night is no false reason.
    const honest = new Set(['too-short', 'difference-too-small', 'barely-fell', 'no-cooling-window']);
    expect(codes.filter((code) => !honest.has(code))).toEqual([]);
  });

  test('are used, nine in ten at least', () => {
    const nights = judged.flat();
    expect(nights.filter(({ used }) => used).length / nights.length).toBeGreaterThan(0.9);
  });

  test('give the time constant of the air without noise, bias and lag to 10 %, in every house', () => {
    const errors = houses.map(({ record, truth }, k) => {
      const onTruth = judged[k].map((night): JudgedNight => {
        const { window } = night;
        if (window === null) return night;
        const fit = refit(truth, truth.insideTemperature, truth.outsideTemperature, window);
        return { ...night, fit };
      });
      const ours = poolTimeConstants(judged[k], record.differenceSd)?.timeConstant.value ?? Number.NaN;
      const exact = poolTimeConstants(onTruth, 0)?.timeConstant.value ?? Number.NaN;
      return Math.abs(ours / exact - 1);
    });
    expect(errors.filter((it) => it < 0.1)).toHaveLength(errors.length);
  });
});

test('windows that stand open for half an hour at three in the morning are seen in nine nights of ten', () => {
  const open = Array.from({ length: 30 }, (_, day) => {
    const from = start + day * 86_400 + 3 * 3600;
    return { from, to: from + 1800 };
  });
  const nights = wallKinds.flatMap((kind) => {
    const { record, nights } = simulatedWinter(kind, 510, open);
    return judgeNights(record, nights.slice(0, -1)).map((night) => ({ night, record }));
  });
  // Seen: named, or the hours before it are counted alone.
  const seen = nights.filter(({ night: { used, window, reasons, night }, record: { grid } }) => {
    if (reasons.some(({ code }) => code === 'opened')) return true;
    const three = Math.floor(night.sunrise / 86_400) * 86_400 + 3 * 3600;
    return used && window !== null && grid.start + window.last * grid.step <= three;
  });
  expect(seen.length / nights.length).toBeGreaterThan(0.9);
});
