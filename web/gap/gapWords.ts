/** What the page of the gap says beside the sentences that come with the assessment. */
import type { Estimate, StageResult } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';

type Test = NonNullable<StageResult['furtherTests']>[number];
type Look = NonNullable<StageResult['whereToLook']>[number];

const widthOf = ({ low, high }: Estimate) => high - low;

/** The test that would leave the least of the interval; null without any. */
export const narrowest = (tests: readonly Test[]): Test | null =>
  tests.toSorted((a, b) => widthOf(a.ratio) - widthOf(b.ratio))[0] ?? null;

/** "Of single steps, this would narrow it most: …. It takes 7 % off the interval's width; …" */
export function narrowestSentence({ text, ratio, chanceToDecide }: Test, today: Estimate): string {
  const less = 1 - widthOf(ratio) / widthOf(today);
  return (
    `Of single steps, this would narrow it most: ${text}. It would take ${figures.percent(less)} off the width ` +
    `of the interval and settle the matter with a chance of ${figures.percent(chanceToDecide)}.`
  );
}

/** The figure of a place, by its kind. */
export function figureOfPlace({ ratio, index, excessGM3 }: Look): string {
  const it = ratio ?? index;
  if (it !== undefined) return figures.ratioBetween(it);
  return excessGM3 === undefined ? '' : `${figures.ratioBetween(excessGM3)} g/m³`;
}

/** In percent; what is nearly certain to be chance is not told to the digit. */
export const chanceAlone = (chance: number | null): string =>
  chance === null
    ? 'not known'
    : chance > 0.995
      ? 'over 99 %'
      : chance < 0.001
        ? 'under 0.1 %'
        : `${figures.decimal(chance * 100, chance < 0.1 ? 1 : 0)} %`;
