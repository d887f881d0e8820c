/** What a comparison of stages puts on its rulers. */
import type { Assessment, Estimate } from '../../src/assessment.ts';
import type { RuleMark } from '../../src/sheet/drawing/ruleMark.ts';

type Compared = Assessment['comparisons'][number];

/** After over before; nothing where nothing could be compared. */
export const ratioMarks = ({ heatLossRatio, timeConstantRatio }: Compared): RuleMark[] =>
  besideUnchanged([...mark('Heat loss', heatLossRatio), ...mark('Time constant', timeConstantRatio)], 1);

/** After less before [W/K]: a saving lies left of zero. */
export const savingMarks = ({ heatLossDifferenceWK }: Compared): RuleMark[] =>
  besideUnchanged(mark('Change', heatLossDifferenceWK), 0);

const mark = (label: string, it: Estimate | null | undefined): RuleMark[] =>
  it ? [{ label, value: it.value, low: it.low, high: it.high, kind: 'measured' }] : [];

const besideUnchanged = (marks: readonly RuleMark[], value: number): RuleMark[] =>
  marks.length === 0 ? [] : [...marks, { label: 'Unchanged', value, kind: 'drawn' }];
