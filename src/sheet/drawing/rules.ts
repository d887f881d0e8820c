/** What an assessment puts on a ruler. */
import type { Assessment, Estimate, StageResult } from '../../assessment.ts';
import type { Answer } from '../../words/answer.ts';
import { methodsInBrief } from '../../words/inBrief.ts';
import type { RuleMark } from './ruleMark.ts';

const measured = (label: string, it: Estimate | null): RuleMark[] =>
  it === null ? [] : [{ label, value: it.value, low: it.low, high: it.high, kind: 'measured' }];

const drawn = (label: string, value: number | null): RuleMark[] =>
  value === null ? [] : [{ label, value, kind: 'drawn' }];

/** Measured heat loss of each stage, other ways to it, and the drawing's; [W/K]. */
export const heatLossMarks = (
  { stages, design }: Assessment,
  others: StageResult['estimates'] = [],
): RuleMark[] => [
  ...stages.flatMap(({ name, heatLossWK }) => measured(name, heatLossWK)),
  ...otherMarks(others),
  ...drawn(...drawnLoss(design)),
];

/** What is not the headline is told as well, but never as loudly. */
const otherMarks = (estimates: StageResult['estimates']): RuleMark[] =>
  estimates.map(({ method, heatLossWK: { value, low, high } }) => ({
    label: methodsInBrief[method],
    value,
    low,
    high,
    kind: 'other',
  }));

/** The same in a line of the list of houses. */
export const answerMarks = ({ heatLossWK, drawnWK }: Answer): RuleMark[] => [
  ...measured('Measured', heatLossWK),
  ...drawn('As drawn', drawnWK),
];

/** [h] */
export const timeConstantMarks = ({ stages }: Assessment): RuleMark[] =>
  stages.flatMap(({ name, timeConstantH }) => measured(name, timeConstantH));

/** Measured over drawn of each stage. */
export const gapMarks = ({ stages }: Assessment): RuleMark[] => {
  const ratios = stages.flatMap(({ name, gap }) => measured(name, gap?.ratio ?? null));
  return ratios.length === 0 ? [] : [...ratios, ...drawn('Exactly as drawn', 1)];
};

/** What the measurement is set beside: the design with vents shut where that is given. */
const drawnLoss = (design: Assessment['design']): [string, number | null] =>
  design?.heatLossAsTestedWK != null
    ? ['As drawn, vents shut', design.heatLossAsTestedWK]
    : ['As drawn', design?.heatLossWK ?? null];
