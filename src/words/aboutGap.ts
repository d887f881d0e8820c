/** What was measured beside what was drawn: where the difference could sit, for the builder and for the people who live there. */
import type { Estimate, Fault, StageResult } from '../assessment.ts';
import type { Bare, GapNote } from '../gap/index.ts';
import { decimal, heatLoss, heatLossBetween, percent, transmittance } from './figures.ts';
import { list, type SentencesFor } from './sentence.ts';

const stateOf = (asTested: boolean) => (asTested ? 'as tested (vents shut, fans off)' : 'as drawn');

const worstAs: Readonly<Record<Bare['as'], string>> = {
  'single pane': 'as a single pane',
  'without insulation': 'wholly without its insulation',
  'worst usual construction': 'as the worst of usual constructions',
};

export const aboutGap: SentencesFor<GapNote> = {
  'gap-compared': ({ asTested, drawn, withAir, range, onGround, neighbours }) => ({
    text: [
      `Compared with the design ${stateOf(asTested)}, ${heatLoss(drawn)}: elements${onGround ? ', the floor by its steady loss to the ground' : ''}${withAir ? ', thermal bridges and air' : ' and thermal bridges'}.`,
      ...(neighbours.length > 0 ? [`Left out on both sides: ${list(neighbours)}, to a heated house.`] : []),
      ...(range === null
        ? []
        : [
            `The design itself is only known to ${lossBetween(range)}; that is not in the interval of the gap.`,
          ]),
    ].join(' '),
  }),
  'gap-without-air': () => ({
    text: 'The design states no ventilation, but air is in what was measured: what it loses more than drawn may be all of it air, so that is no verdict.',
    remedy: 'Give "ventilation" and "volumeM3".',
  }),
  'gap-vents-in-use': () => ({
    text: 'The design is known with its vents in use only; if they were shut in these nights, the house loses less than that for no merit of its fabric.',
    remedy:
      'Give "asTestedAirChangesPerHour" under "ventilation", or say under "conditions" whether "ventsClosed".',
  }),
  'gap-none': ({ sure, less, most }) => ({
    text:
      `By the best figure it loses ${heatLoss(less)} less than drawn${sure ? ': good news, and no gap to place in any element' : ', which is no verdict yet'}.` +
      (most > 0 ? ` The range still allows for ${heatLoss(most)} more than drawn.` : ''),
  }),
  'gap-may-be-none': ({ most }) => ({
    text: `The measured range reaches down to the design: there may be no gap at all, or one of up to ${heatLoss(most)}.`,
  }),
  'gap-within-design': ({ high }) => ({
    text: `By its own uncertainty the design might come to ${heatLoss(high)} without a fault in the building, so part or all of the gap may lie in the drawing’s figures.`,
    remedy: 'Check the conductivities, timber shares and areas of the elements that lose most.',
  }),
  'mean-transmittance': ({ asTested, measured, drawn, ventilation }) => ({
    text:
      `With the ventilation ${stateOf(asTested)} taken out (${heatLoss(ventilation.value)}), the mean U-value of the ` +
      `shell is ${decimal(measured.low, 2)} to ${transmittance(measured.high)} (${decimal(measured.value, 2)}); drawn ${transmittance(drawn)}. ` +
      `Thermal bridges are in both. How much air really passed was not measured: the range allows for ${lossBetween(ventilation)}.`,
  }),
  'gap-in-elements': () => ({
    text: 'The U-values of single elements say what each would have to be if the whole gap sat in it, or if all insulated elements shared it evenly. Neither was measured there; bridges and draughts may hold part of it or all.',
  }),
  'element-cannot-carry': ({ name, as, transmittance: worst, share }) => ({
    text: `“${name}” cannot hold the gap alone: even ${worstAs[as]} (about ${transmittance(worst)}) it would explain ${percent(share)} of it.`,
  }),
};

const causes: Readonly<Record<Fault, string>> = {
  'open-joints': 'Joints open enough for air to circulate around the insulation (ISO 6946, level 2)',
  'more-timber': 'Half as much timber again as drawn',
  'insulation-left-out': 'Insulation left out over a tenth of the area',
};

/** "Half as much timber again as drawn could explain up to 12 % of the gap (U-value 0.19 W/(m²K))." */
export const sayExplanation = (fault: Fault, share: number, worse: number): string =>
  `${causes[fault]} could explain ${share >= 1 ? 'all' : `up to ${percent(share)}`} of the gap (U-value ${transmittance(worse)}).`;

type GapResult = NonNullable<StageResult['gap']>;

/** The gap for the people who live there; null where nothing is said of it. */
export function gapSentence({ excessWK: excess, verdict, elements = [] }: GapResult): string | null {
  if (excess === undefined) return null;
  if (excess.value <= 0)
    return verdict === 'meets'
      ? `It loses no more than it was designed to${excess.high > 0 ? ', as far as can be told' : ''}: nothing needs to be looked for.`
      : 'It seems to lose no more than it was designed to, but that is not settled.';
  const [least, most] = lossBetween(excess).replace(' W/K', ' watts').split(' to ');
  const opening =
    excess.low > 0
      ? `For every degree that it is colder outside it loses ${least} to ${most} more than designed.`
      : `For every degree that it is colder outside it loses up to ${most} more than designed, or nothing more.`;
  const able = elements.filter(({ uValueAlone }) => uValueAlone !== null).map(({ name }) => name);
  if (elements.length === 0) return opening;
  return able.length === 0
    ? `${opening} No one part of the shell can be the only cause; draughts might be.`
    : `${opening} Any one of these could be the cause, or draughts, or several a little: ${list(able)}. The loggers cannot tell which.`;
}

/** The interval without the single figure: "88 to 189 W/K". */
const lossBetween = (it: Estimate) => heatLossBetween(it).replace(/ \(.*/, '');
