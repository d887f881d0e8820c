/** Whether the ways to the heat loss agree, what they share, and why they may not. */
import type { AgreementNote, Cause, Source } from '../gap/index.ts';
import { count, heatLoss } from './figures.ts';
import { methodsSpoken } from './names.ts';
import type { SentencesFor } from './sentence.ts';

const and = new Intl.ListFormat('en-GB');
const spoken = (methods: readonly (keyof typeof methodsSpoken)[]) =>
  and.format(methods.map((method) => methodsSpoken[method]));
const numbers = ['No', 'One', 'Two', 'Three', 'Four'];

const sourcesSpoken: Readonly<Record<Source, string>> = {
  drawing: 'the layers as drawn',
  'free nights': 'the same nights',
  'heated night': 'the heat of the heated night',
  'metered days': 'the metered days',
};

const named = (sharing: readonly Source[]) => and.format(sharing.map((source) => sourcesSpoken[source]));

export const aboutAgreement: SentencesFor<AgreementNote | Cause> = {
  'ways-agree': ({ methods, low, high }) => ({
    text: `${numbers[methods.length] ?? methods.length} ways that share little beyond the loggers agree: ${spoken(methods)}. All of them allow what lies between ${heatLoss(low)} and ${heatLoss(high)}.`,
  }),
  'ways-agree-sharing': ({ methods, sharing }) => ({
    text:
      `The ways agree (${spoken(methods)}), but ` +
      (sharing.length === 0
        ? 'each shares something with another, so they are no witnesses apart.'
        : `all rest on ${named(sharing)}, so it says little that they do.`),
    remedy: sharing.includes('metered days')
      ? 'Some nights without heating, or a heated night, would be a witness of their own.'
      : 'A heated night, or days with all heat metered, would be a witness of its own.',
  }),
  'no-witness-of-its-own': ({ methods, sharing }) => ({
    text: `Others agree as well, but are no witnesses of their own, because they share ${named(sharing)}: ${spoken(methods)}.`,
  }),
  'ways-apart': ({ lower, higher, sharing }) => ({
    text:
      `These cannot all be right: ${spoken(lower)} ${lower.length === 1 ? 'reads' : 'read'} lower than ${spoken(higher)}, beyond what their intervals allow` +
      (sharing.length === 0 ? '.' : `, though they share ${named(sharing)}.`),
  }),
  'heat-not-counted': () => ({
    text: 'More heat may have come in than was metered: people, cooking, another heater, the sun. The metered way then reads low.',
    remedy: 'Meter all heat, or state what is always on as "constantGainsW".',
  }),
  'heat-gone-elsewhere': () => ({
    text: 'Not all that was metered may have warmed the house: a boiler’s flue, hot water, a heater beyond the shell. The metered way then reads high.',
    remedy: 'State the share that warms the house as "part" of the heat entry.',
  }),
  'sun-not-counted': ({ logged }) => ({
    text: 'The sun’s heat may not be counted rightly: a way that leaves it out reads low.',
    ...(logged ? {} : { remedy: 'Add a weather file with global irradiance.' }),
  }),
  'sun-on-logger': ({ place }) => ({
    text:
      place === 'outside'
        ? 'The sun may have shone on an outdoor logger: by day the difference then looks smaller and the loss larger, while the nights stay right.'
        : 'The sun may have shone on an inside logger: by day the difference then looks larger and the loss smaller, while the nights stay right.',
    remedy: 'Look at that logger’s course on sunny days, and shade it.',
  }),
  'neighbour-warms': ({ known }) => ({
    text: `Next door is heated and has no logger${known === 'stated' ? '' : ', nor is its temperature stated'}: what comes through that wall tells in each way differently.`,
    remedy: 'Lay a logger next door.',
  }),
  'drying-draws-heat': ({ weeks }) => ({
    text: `Wet trades ${weeks === 0 ? 'are under way' : `ended within ${count(weeks, 'week')}`}: drying draws heat that no wall loses, and the metered way then reads high.`,
    remedy: 'Measure again when it has dried.',
  }),
  'mass-unlike-drawn': ({ more }) => ({
    text: more
      ? 'The house may hold more heat than drawn (heavier layers, furniture, stored goods): the ways that rest on its mass then read low.'
      : 'The house may hold less heat than drawn (lighter layers, linings that cut the mass off): the ways that rest on its mass then read high.',
  }),
  'layers-unlike-drawn': () => ({
    text: 'Both take the layers as drawn, and read other parts of them: one of the inner layers may not be built as drawn.',
  }),
  'heated-night-strained': () => ({
    text: 'The heated night was not a good one for this: too weak or strong a heater, mass that had not settled, or changing weather.',
    remedy: 'Repeat it.',
  }),
};
