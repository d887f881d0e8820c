/** Why a night was used or left out, and what is to be said of all nights together. */
import type { NightReason, NightsNote } from '../cooling/index.ts';
import {
  count,
  day,
  decimal,
  duration,
  energy,
  hours,
  kelvins,
  ratioBetween,
  temperature,
} from './figures.ts';
import type { SentencesFor } from './sentence.ts';

const because = (why: string | null) => (why ? `: ${why}` : '');

export const aboutNights: SentencesFor<NightReason | NightsNote> = {
  'no-inside-readings': () => ({ text: 'no inside readings that night' }),
  'no-outside-readings': () => ({ text: 'no outdoor readings that night' }),
  'gap-inside': ({ missing }) => ({ text: `${duration(missing)} of inside readings missing` }),
  'gap-outside': ({ missing }) => ({ text: `${duration(missing)} of outdoor readings missing` }),
  'gap-neighbour': ({ missing }) => ({ text: `${duration(missing)} of the neighbour’s readings missing` }),
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
  'heating-cycled': ({ times, swing }) => ({
    text: `the heating came back ${times} times in the night, ${kelvins(swing)} each time`,
    remedy: 'Turn the thermostat right down for the night.',
  }),
  'heat-came-in': ({ rise, beforeSunrise }) => ({
    text: `it rose again by ${kelvins(rise)}, ${duration(beforeSunrise)} before sunrise: a heater, people or an oven`,
  }),
  'room-warmed': ({ room, rise }) => ({
    text: `“${room}” warmed by ${kelvins(rise)} while the house cooled: a heater, or something warm beside the logger`,
  }),
  opened: ({ fall, beforeSunrise }) => ({
    text: `it fell by ${kelvins(fall)} within 20 minutes, ${duration(beforeSunrise)} before sunrise: a window, door or hatch was opened`,
  }),
  'sun-still-on': ({ irradiance }) => ({
    text: `the weather record has sun of ${decimal(irradiance, 0)} W/m² in these night hours`,
    remedy: 'A clock runs wrong: see to “timeZone” and “clockOffsetMin” of the weather and of the loggers.',
  }),
  'outside-stood-still': ({ temperature: stood, duration: long }) => ({
    text: `the outdoor logger stood at ${temperature(stood)} for ${duration(long)} without a change`,
    remedy: 'Look whether it had stopped, or lay where no weather comes.',
  }),
  'outside-jumped': ({ jump }) => ({
    text: `the outdoor logger jumped by ${kelvins(jump)} within ten minutes: was it moved?`,
  }),
  'outside-above-inside': ({ duration: long }) => ({
    text: `for ${duration(long)} it was warmer outside than inside`,
  }),
  'barely-fell': ({ drop }) => ({ text: `it fell by only ${kelvins(drop)}` }),
  'uneven-fall': ({ rms }) => ({
    text: `the fall is uneven (${kelvins(rms)} off the curve): something was switched or opened`,
  }),
  'put-in-by-hand': ({ why }) => ({ text: `put in by hand${because(why)}` }),
  'left-out-by-hand': ({ why }) => ({ text: `left out by hand${because(why)}` }),
  'time-constant-moves': ({ from, to, later, nights }) => ({
    text: `The time constant depends on when one begins: ${hours(from / 3600)} from the hours as chosen, ${hours(to / 3600)} when ${count(nights, 'night')} begin ${duration(later)} later. Mass deep in the walls cools after the air; the plain curve does not know it.`,
  }),
  'one-night-carries': ({ date, withAll, without }) => ({
    text: `The night of ${day(date)} carries much of the time constant: ${hours(withAll / 3600)} with it, ${hours(without / 3600)} without it.`,
    remedy: 'Look at that night, and let more nights pass.',
  }),
  'room-cools-fastest': ({ room, ratio, low, high }) => ({
    text: `“${room}” cools fastest: its time constant is ${ratioBetween({ value: ratio, low, high })} times the house’s. More outer wall or less mass alone can do that.`,
  }),
};
