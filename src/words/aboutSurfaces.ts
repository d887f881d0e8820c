/** What loggers on surfaces tell of the elements under them. */
import type { SurfaceNote } from '../heatloss/index.ts';
import { decimal, kelvins } from './figures.ts';
import type { SentencesFor } from './sentence.ts';

export const aboutSurfaces: SentencesFor<SurfaceNote> = {
  'surface-without-element': () => ({
    text: 'It is not said which element this logger sits on, so no U-value is read from it.',
    remedy: 'Name it as the logger’s "element".',
  }),
  'surface-on-ground': () => ({
    text: 'It sits on a floor on the ground: what the ground takes does not follow the air outside, so no U-value is read.',
  }),
  'surface-far-side-unknown': () => ({
    text: 'No logger is behind this element, so no U-value is read.',
    remedy: 'Lay one in the void or next door, with the same "element".',
  }),
  'surface-no-steady-hours': () => ({
    text: 'No night or day serves: at least 5 K between both sides, no sun on the outer face, and no readings missing.',
    remedy: 'Leave the logger there through dull, cold days.',
  }),
  'surface-warmer-than-air': ({ drop }) => ({
    text: `The surface was ${kelvins(Math.abs(drop))} warmer than the air of its room in the mean, so no U-value can be read: heat came from the element, or the loggers differ by more than what is sought.`,
    remedy: 'Lay both loggers side by side for a day and state it as "coLocation".',
  }),
  'surface-too-wide': ({ drop, loggersSd }) => ({
    text: `Surface and air were ${decimal(drop, 2)} K apart, and the loggers may be off by ${decimal(1.96 * loggersSd, 2)} K: too wide to say anything of this element.`,
    remedy:
      'Lay both loggers side by side for a day and state it as "coLocation"; of a well insulated element this way tells little even so.',
  }),
  'surface-rule-duration': ({ blocks }) => ({
    text: `${blocks === 1 ? 'One night or day' : `${blocks} nights or days`} only: the average method asks for at least 72 hours, so this is not accepted.`,
  }),
  'surface-rule-last-day': () => ({
    text: 'The last 24 hours still moved it by more than 5 %, so the average method does not accept it.',
    remedy: 'Measure for longer.',
  }),
  'surface-rule-two-thirds': () => ({
    text: 'The first and the last two thirds of the time differ by more than 5 %, so the average method does not accept it.',
    remedy: 'Measure for longer.',
  }),
  'surface-rule-storage': () => ({
    text: 'The element grew warmer or colder on the whole, and took or gave more than 5 % of the heat, so the average method does not accept it.',
    remedy: 'Measure for longer, or in steadier weather.',
  }),
  'surface-storage-not-judged': () => ({
    text: 'Its layers do not tell what it stores, so that rule of the average method was not judged.',
  }),
  'surface-nights-read': () => ({ text: 'A light element: read from nights only.' }),
  'surface-days-read': () => ({
    text: 'A heavy element, or one whose mass is not known: read from whole days, so that what it stores by day it gives back by night.',
  }),
  'surface-sun-not-known': () => ({
    text: 'No irradiance was given, so sunny days are in it: sun on the outer face makes it read low.',
    remedy: 'Add a weather file with global irradiance.',
  }),
  'surface-room-without-logger': () => ({
    text: 'No inside logger hangs in this room, so the mean of the house stands for its air; the interval is wider for it.',
    remedy: 'Give the surface logger the "room" of an inside one.',
  }),
  'surface-resistance-assumed': ({ resistance }) => ({
    text: `There is no heat-flux plate: the heat is taken from the difference between air and surface through a surface resistance of ${decimal(resistance, 2)} m²K/W, which a real room meets to about a quarter. It tells of this spot only.`,
  }),
};
