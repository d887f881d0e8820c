/** The sentences of stages. */
import type { StageNote } from '../gap/index.ts';
import { count, dayOfYear, days } from './figures.ts';
import { methodNames } from './names.ts';
import { list, type SentencesFor } from './sentence.ts';

const nightsOf = (dates: readonly string[]) => `${dates.length === 1 ? 'night' : 'nights'} of ${days(dates)}`;

export const aboutStages: SentencesFor<StageNote> = {
  'night-crosses-stage': ({ dates }) => ({
    text: `The ${nightsOf(dates)} ${dates.length === 1 ? 'crosses the bound of a stage and belongs' : 'cross the bound of a stage and belong'} to neither.`,
  }),
  'no-night-in-stage': () => ({
    text: 'No night of the record falls into this stage.',
    remedy: 'Check its dates.',
  }),
  'too-few-nights': ({ used }) => ({
    text: `${used === 0 ? 'No night' : count(used, 'night')} could be used; a time constant needs at least two.`,
  }),
  'hand-picked': ({ dates }) => ({
    text: `The ${nightsOf(dates)} ${dates.length === 1 ? 'was' : 'were'} judged by hand.`,
  }),
  'stage-not-complete': ({ missing }) => ({
    text: `The house was not complete in this stage${missing.length > 0 ? ` (missing: ${list(missing)})` : ''}, so it gets no verdict against the finished design.`,
  }),
  'stages-overlap': ({ names }) => ({
    text: `The stages ${list(names)} overlap: their shared nights count in both, and the design’s network is left out, because it fits all stages at once.`,
    remedy: 'Move a bound.',
  }),
  'stage-outside-record': () => ({
    text: 'This stage lies outside the record.',
    remedy: 'Check its dates and the loggers’ clocks.',
  }),
  'compared-with-design-as-tested': () => ({
    text: 'Set beside the design as tested (vents shut, fans off).',
  }),
  'open-to-neighbour': () => ({
    text: 'A door or hatch stands open to a heated house, so no heat loss is given: what goes through it cannot be told from what the shell loses.',
    remedy: 'Shut and tape it, measure anew, and set "openToNeighbour" to false.',
  }),
  'ratio-with-open-door': () => ({
    text: 'A door or hatch stood open to a heated house: the ratio is that of the cooling, with what went through the door in it.',
  }),
  'meter-not-of-heating': () => ({
    text: 'What was metered is far less than this house would lose: it is taken for one appliance, not for the heating, and left out.',
    remedy: 'Meter all of the heating, or state small constant heat under "constantGainsW".',
  }),
  'size-unknown': () => ({
    text: 'Neither the floor area nor the volume of the house is stated, so the design’s network is left out and the heat loss rests on plainer ways alone.',
    remedy: 'Give "floorAreaM2", and "volumeM3" if you know it.',
  }),
  'methods-disagree': ({ methods }) => ({
    text: `Two ways to the heat loss contradict each other (${methods.map((it) => methodNames[it]).join('; ')}), so there is no verdict.`,
    remedy:
      'Usual causes: heat that was not metered, sun on a logger, a heated neighbour, mass still drying.',
  }),
  'same-mass-assumed': () => ({ text: 'The ratio takes the heat capacity to be the same in both stages.' }),
  'mass-may-differ': ({ names }) => ({
    text: `${list(names)} differ between the stages, so part of the change may be heat capacity and not heat loss.`,
  }),
  'no-such-night': ({ date }) => ({
    text: `There is no night of ${dayOfYear(date)} in the record.`,
    remedy: 'Check the date under "nights".',
  }),
};
