/** What a heat loss rests on. */
import type { HeatLossNote } from '../heatloss/index.ts';
import { count, days, percent, power } from './figures.ts';
import type { SentencesFor } from './sentence.ts';

const nightsOf = (dates: readonly string[]) => `${dates.length === 1 ? 'night' : 'nights'} of ${days(dates)}`;

export const aboutHeatLoss: SentencesFor<HeatLossNote> = {
  'known-bias': ({ readsLowBy }) => ({
    text: `This plain form reads about ${percent(readsLowBy)} low on simulated houses; the interval allows for it.`,
  }),
  'rests-on-capacity': ({ relativeSd }) => ({
    text: `It rests on the heat capacity worked out from the design, taken as known to ${percent(1.96 * relativeSd)} either way.`,
  }),
  'gains-allowed-for': ({ gains }) => ({ text: `${power(gains)} of constant gains were allowed for.` }),
  'heater-weak': ({ share }) => ({
    text: `The house loses ${percent(share)} of what the heater gave: too weak a heater to tell much.`,
    remedy: 'Repeat it with a stronger heater, or on a milder night.',
  }),
  'heater-strong': ({ share }) => ({
    text: `The house loses only ${percent(share)} of what the heater gave: a gentler heater would tell more.`,
  }),
  'borrowed-from-stage': ({ stage }) => ({
    text: `No heat was metered in this stage; the watts are those of “${stage}”, carried over by the ratio of the cooling rates.`,
  }),
  'calibrated-by-stage': ({ stage }) => ({
    text: `No heat was metered in this stage; the metered heat of “${stage}” tells how much heat the house holds, and that serves here too.`,
  }),
  'heated-nights-used': ({ dates }) => ({
    text: `From the heated ${nightsOf(dates)}.`,
  }),
  'days-used': ({ used, leftOut }) => ({
    text: `From ${count(used, 'metered day')}; ${leftOut} left out for gaps, no heat or too small a difference.`,
  }),
  'sun-not-separable': () => ({
    text: 'Sun and temperature difference rose and fell together, so what each did cannot be told well apart.',
  }),
  'no-irradiance': () => ({
    text: 'No irradiance was given, so the sun’s heat is not taken out: the loss reads low.',
    remedy: 'Add a weather file with global irradiance.',
  }),
  'no-wind': () => ({
    text: 'No wind speed was given, so leakage is taken to follow the temperatures alone.',
    remedy: 'A weather file with wind speed from a station nearby narrows the interval.',
  }),
  'still-drying': ({ weeks }) => ({
    text: `Wet trades ${weeks === 0 ? 'are under way' : `ended within ${count(weeks, 'week')}`}: drying draws heat, as 10 litres of water a day take about 280 W. The interval is wider for it.`,
    remedy: 'Measure again when plaster and screed have dried.',
  }),
};
