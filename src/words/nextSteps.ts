/** What to do next, with the cautions that belong to it. */
import type { Candidate, NextStep } from '../gap/index.ts';
import { count, duration, kelvins, percent, power, ratioBetween, temperature } from './figures.ts';
import type { SentencesFor } from './sentence.ts';

/** What a heater left on in a building site asks for, said wherever a heated night is proposed. */
export const heaterCautions =
  'Electric heat only, never an unflued flame; a heater with a thermostat cut-out, on its own uncoiled lead, well ' +
  'clear of insulation and sheeting; a working smoke alarm; combustion appliances and flues left alone. Do not leave ' +
  'it unattended where local rules or the insurer forbid it.';

export const aboutNextSteps: SentencesFor<NextStep> = {
  'next-wait-for-cold': ({ needed }) => ({
    text: `Nothing can be told from these nights. Nights at least ${kelvins(needed)} colder than inside, heating off from the evening, would tell.`,
  }),
  'next-more-nights': ({ have, needed }) => ({
    text: `${count(have, 'good night')} so far; ${needed} make the cooling rate about as sure as loggers alone can.`,
  }),
  'next-heated-night': ({ nightsHelp }) => ({
    text: `${nightsHelp ? 'What loggers alone cannot settle one heated night can' : 'More nights will not settle it; one heated night can'}: a metered electric heater from dusk for about six hours, then off till after sunrise.`,
    remedy: heaterCautions,
  }),
  'next-metered-week': () => ({
    text: 'The metered heat so far leaves it open. A week or more with all heating metered, in cold weather and with wind and sun logged, narrows it.',
    remedy: heaterCautions,
  }),
  'next-not-more-nights': ({ nights, decides }) => ({
    text: `More nights like these will hardly settle it: ${nights} more would with a chance of ${chance(decides)}.`,
  }),
  'next-best-test': (candidate) => ({
    text: `What most likely settles it: ${testWords(candidate)}. Measured over drawn would then be known to about ${ratioBetween(candidate.ratio)} if the figure stays; the chance of an answer is ${chance(candidate.decides)}.`,
    ...cautionsOf(candidate),
  }),
  'next-stays-open': (candidate) => ({
    text: `${candidate.decides < HARDLY_WORTH ? 'It will probably stay open, whatever is measured next' : 'It may stay open'}: the best next test is ${testWords(candidate)}, and the chance that it settles the matter is ${chance(candidate.decides)}. It would leave measured over drawn at about ${ratioBetween(candidate.ratio)}.`,
    ...cautionsOf(candidate),
  }),
  'next-settle-ways': () => ({
    text: 'Two ways to the heat loss contradict each other: find out why before another test is made, beginning with the usual causes.',
  }),
  'next-nights-by-hand': () => ({
    text: 'All nights that could count were left out by hand. Put some back, or log more.',
  }),
  'next-give-design': () => ({
    text: 'Without the design there is nothing to set it beside.',
    remedy:
      'Draw the elements on the page of the build-ups, or give them under "elements" in house.json: areas, and layers or U-values.',
  }),
  'next-give-capacity': () => ({
    text: 'The cooling rate is known, but not the heat capacity that turns it into watts.',
    remedy: 'Give "floorAreaM2", or the layers of the elements.',
  }),
  'next-look-for-loss': () => ({
    text: 'The shell loses more than drawn. Look where it can still be reached: joints at plates and ridge, hatches, pipes and cables through the lining, boards not tight to the timber.',
    remedy: 'Mind ladders and loft joists; leave flues and roof ventilation open.',
  }),
  'next-keep-record': () => ({
    text: 'The shell performs as drawn, within the allowance. Keep the logs with the house’s papers.',
  }),
};

/** A test as an errand. */
export function testWords({ test }: Pick<Candidate, 'test'>): string {
  switch (test.kind) {
    case 'more-nights':
      return `${count(test.nights, 'more night')} like these, heating off from the evening`;
    case 'heated-night':
      return `one heated night with ${power(test.power)}${test.power > ONE_CIRCUIT ? ' on two separate circuits' : ''} of metered electric heat for ${duration(test.duration)} from an hour after sunset, then none till after sunrise (it gets no warmer than about ${temperature(test.peak)})`;
    case 'metered-week':
      return 'a week kept at about 20 °C with all heat metered and the sun logged';
    case 'loggers-side-by-side':
      return 'all loggers side by side in one room for a day, so that their own errors are known';
    case 'logger-next-door':
      return 'a logger in the heated house next door';
    case 'capacity-known':
      return 'a look at what the inner linings, floors and partitions are really made of, so that the heat capacity is known to within about a sixth';
    case 'wind-logged':
      return 'wind speed from a station nearby';
  }
}

/** What one circuit of a site carries for hours [W]. PRACTICE: about four fifths of a socket's fuse. */
const ONE_CIRCUIT = 3000;
const HEATING: readonly Candidate['test']['kind'][] = ['heated-night', 'metered-week'];
const cautionsOf = ({ test }: Candidate) => (HEATING.includes(test.kind) ? { remedy: heaterCautions } : {});
/** A test that settles so little is hardly worth its trouble [–]. PRACTICE. */
const HARDLY_WORTH = 0.25;
/** In tens of percent: more is not known of a chance. */
export const chance = (of: number): string =>
  of > 0.95 ? 'over 95 %' : of < 0.05 ? 'under 5 %' : `about ${percent(Math.round(of * 10) / 10)}`;
