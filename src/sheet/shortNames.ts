/** First page and rulers have room for so much of a name; the tables have it whole. */
import type { Assessment } from '../assessment.ts';

const LONGEST = 30; // letters, on the first page
const LONGEST_ON_RULER = 32;
const CUT = '…';

/** The same assessment, the names of stages, elements and places cut to what fits. */
export const withShortNames = (assessment: Assessment, longest = LONGEST): Assessment => ({
  ...assessment,
  stages: assessment.stages.map((stage) => ({
    ...stage,
    name: short(stage.name, longest),
    whereToLook: stage.whereToLook?.map((it) => ({ ...it, place: short(it.place, longest) })),
    gap: stage.gap && {
      ...stage.gap,
      elements: stage.gap.elements?.map((it) => ({ ...it, name: short(it.name, longest) })),
    },
  })),
  comparisons: assessment.comparisons.map((it) => ({
    ...it,
    before: short(it.before, longest),
    after: short(it.after, longest),
  })),
});

/** For the marks of a ruler, where a figure must stand behind the name. */
export const forRulers = (assessment: Assessment): Assessment => withShortNames(assessment, LONGEST_ON_RULER);

/** Whether there are such names: they are long even so, and what stands beside them has less room. */
export const anyCut = ({ stages }: Assessment): boolean =>
  stages.some(({ name, gap }) => [{ name }, ...(gap?.elements ?? [])].some((it) => it.name.endsWith(CUT)));

/** Between two letters, never within one. */
export const short = (name: string, longest: number): string => {
  const letters = Array.from(name);
  return letters.length <= longest
    ? name
    : `${letters
        .slice(0, longest - 1)
        .join('')
        .trimEnd()}${CUT}`;
};
