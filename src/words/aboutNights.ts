/** Why a night was used or left out. */
import type { NightReason } from '../cooling/index.ts';
import { duration, energy, kelvins } from './figures.ts';
import type { SentencesFor } from './sentence.ts';

const because = (why: string | null) => (why ? `: ${why}` : '');

export const aboutNights: SentencesFor<NightReason> = {
  'no-inside-readings': () => ({ text: 'no inside readings that night' }),
  'no-outside-readings': () => ({ text: 'no outdoor readings that night' }),
  'gap-inside': ({ missing }) => ({ text: `${duration(missing)} of inside readings missing` }),
  'gap-outside': ({ missing }) => ({ text: `${duration(missing)} of outdoor readings missing` }),
  'no-cooling-window': () => ({ text: 'heat came in until the end of the night: nothing cooled freely' }),
  'too-short': ({ duration: had, needed }) => ({
    text: `only ${duration(had)} of free cooling once heat had left, ${duration(needed)} needed`,
  }),
  'difference-too-small': ({ difference, needed }) => ({
    text:
      difference < 0
        ? 'it was colder inside than outside'
        : `only ${kelvins(difference)} warmer inside than outside, ${kelvins(needed)} needed`,
  }),
  'heater-on': ({ energy: heat }) => ({ text: `a metered heater gave ${energy(heat)}` }),
  'barely-fell': ({ drop }) => ({ text: `it fell by only ${kelvins(drop)}` }),
  'uneven-fall': ({ rms }) => ({
    text: `the fall is uneven (${kelvins(rms)} off the curve): something was switched or opened`,
  }),
  'put-in-by-hand': ({ why }) => ({ text: `put in by hand${because(why)}` }),
  'left-out-by-hand': ({ why }) => ({ text: `left out by hand${because(why)}` }),
};
