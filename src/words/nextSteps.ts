/** What to do next, with the cautions that belong to it. */
import type { NextStep } from '../gap/index.ts';
import { count, kelvins } from './figures.ts';
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
  'next-give-design': () => ({
    text: 'Without the design there is nothing to set it beside.',
    remedy: 'Give the elements with their areas and U-values or layers under "elements".',
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
