/** What the page of the gap puts on its rulers. */
import type { Assessment, Estimate, StageResult } from '../../src/assessment.ts';
import type { RuleMark } from '../../src/sheet/drawing/ruleMark.ts';
import { methodsInBrief, testsInBrief } from '../../src/words/inBrief.ts';
import { figures } from '../../src/words/index.ts';

export type TheDesign = NonNullable<Assessment['design']>;
/** What a measurement is set beside. */
type DrawnLoss = Pick<TheDesign, 'heatLossWK' | 'heatLossAsTestedWK' | 'ranges'>;

export type ElementGap = NonNullable<NonNullable<StageResult['gap']>['elements']>[number];

/** What a measurement is set beside: the design with vents shut where that is given, and how sure that figure is. */
export function drawnBeside({ heatLossWK, heatLossAsTestedWK: tested, ranges }: DrawnLoss): {
  readonly label: string;
  readonly value: number;
  readonly range: Estimate;
} {
  return tested !== null && ranges.heatLossAsTestedWK !== null
    ? { label: 'As drawn, vents shut', value: tested, range: ranges.heatLossAsTestedWK }
    : { label: 'As drawn', value: heatLossWK, range: ranges.heatLossWK };
}

/** Measured, drawn, the drawing's own range, and how far above it still counts as drawn; [W/K]. */
export function wholeHouseMarks(
  { heatLossWK: measured }: Pick<StageResult, 'heatLossWK'>,
  design: DrawnLoss,
  allowance: number,
): RuleMark[] {
  const { label, value, range } = drawnBeside(design);
  return [
    ...markOf('Measured', measured, 'measured'),
    notch(label, value),
    ...markOf('Range as drawn', range, 'other'),
    notch(allowanceLabel(allowance), value * (1 + allowance)),
  ];
}

export const allowanceLabel = (allowance: number) => `With ${figures.percent(allowance)} allowance`;

/** [W/(m²K)] */
export const meanUValueMarks = (mean: Estimate, design: Pick<TheDesign, 'meanUValue'>): RuleMark[] => [
  ...markOf('Measured', mean, 'measured'),
  notch('As drawn', design.meanUValue),
];

/** What an element would have to be; none of it was measured there. [W/(m²K)] */
export const elementMarks = ({ uValueDrawn, uValueAlone, uValueEvenly }: ElementGap): RuleMark[] => [
  notch('As drawn', uValueDrawn),
  ...markOf('It alone', uValueAlone, 'other'),
  ...markOf('All evenly', uValueEvenly, 'other'),
];

/** One that the average method does not accept is hollow. [W/(m²K)] */
export const surfaceMarks = ({
  uValueWM2K: local,
  accepted,
  designUValue,
}: NonNullable<StageResult['surfaces']>[number]): RuleMark[] => [
  ...markOf(accepted ? 'At this spot' : 'Not accepted', local, accepted ? 'measured' : 'other'),
  ...(designUValue === null ? [] : [notch('As drawn', designUValue)]),
];

/** Through the shell and with the air, each beside the drawing's; [W/K]. */
export function apartMarks(apart: NonNullable<StageResult['apart']>, design: TheDesign): RuleMark[] {
  const { shell, air } = drawnApart(design);
  return [
    ...markOf('Through the shell', apart.fabricWK, 'measured'),
    notch('Shell as drawn', shell),
    ...markOf('With the air', apart.leakageWK, 'measured'),
    notch('Air as drawn', air),
  ];
}

/** The drawing's two parts of what a measurement is set beside; [W/K]. */
export function drawnApart(design: DrawnLoss & Pick<TheDesign, 'fabricWK' | 'bridgesWK'>): {
  readonly shell: number;
  readonly air: number;
} {
  const shell = design.fabricWK + design.bridgesWK;
  return { shell, air: drawnBeside(design).value - shell };
}

/** Measured over drawn: today, and what each test would leave of it. */
export const testMarks = (
  { gap, furtherTests = [] }: Pick<StageResult, 'gap' | 'furtherTests'>,
  allowance: number,
): RuleMark[] => [
  ...markOf('Today', gap?.ratio ?? null, 'measured'),
  ...furtherTests.flatMap(({ test, ratio }) => markOf(testsInBrief[test], ratio, 'other')),
  notch('Exactly as drawn', 1),
  notch(allowanceLabel(allowance), 1 + allowance),
];

/** Each room's time constant over the house's, in the order of the list. */
export const roomMarks = ({ whereToLook = [] }: Pick<StageResult, 'whereToLook'>): RuleMark[] => {
  const rooms = whereToLook.flatMap(({ kind, place, ratio }) =>
    kind === 'room' && ratio !== undefined ? markOf(place, ratio, 'measured') : [],
  );
  return rooms.length === 0 ? [] : [...rooms, notch('As the house', 1)];
};

/** All ways to the heat loss, the one that leads as the measured one; [W/K]. */
export const wayMarks = (
  { estimates, heatLossWK: headline }: Pick<StageResult, 'estimates' | 'heatLossWK'>,
  design: DrawnLoss | null,
): RuleMark[] => [
  ...estimates.flatMap(({ method, heatLossWK }) =>
    markOf(methodsInBrief[method], heatLossWK, method === headline?.method ? 'measured' : 'other'),
  ),
  ...(design === null ? [] : [notch(drawnBeside(design).label, drawnBeside(design).value)]),
];

const markOf = (label: string, it: Estimate | null, kind: 'measured' | 'other'): RuleMark[] =>
  it === null ? [] : [{ label, value: it.value, low: it.low, high: it.high, kind }];

const notch = (label: string, value: number): RuleMark => ({ label, value, kind: 'drawn' });
